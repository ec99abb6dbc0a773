-- Necks that a plan was accepted for and makes no longer. Their rows in plan_neck are gone, so that another plan can make them.
create table given_up_neck (
    plan_id     bigint        not null references plan (id),
    order_code  varchar(40)   not null,
    neck_number integer       not null check (neck_number >= 1),
    given_up_at timestamp with time zone not null,
    who         varchar(80)   not null,
    why         varchar(2000) not null,
    primary key (plan_id, order_code, neck_number)
);
