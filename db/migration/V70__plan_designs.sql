-- The designs a plan makes necks of, as they were when it was made: a design that was changed since needs another plan.
create table plan_design (
    plan_id        bigint      not null references plan (id),
    design_code    varchar(40) not null,
    design_version bigint      not null check (design_version >= 0),
    primary key (plan_id, design_code)
);
