-- What the shop has to work with: people, clamps, glues, hours. Minutes for each step and for a set-up are choices of this
-- program to begin with, no published figures.
create table workshop (
    id                 integer      not null primary key check (id = 1),
    version            bigint       default 0 not null,
    hands              integer      not null check (hands between 1 and 20),
    people             varchar(200) not null,
    clamp_sets         integer      not null check (clamp_sets between 0 and 99),
    celsius_tenths     integer      not null check (celsius_tenths between -100 and 500),
    glue_code          varchar(20),
    set_up_minutes     integer      not null check (set_up_minutes between 0 and 240)
);

-- Hands-on minutes for each step of a neck.
create table step_minutes (
    kind    varchar(10) not null primary key
        check (kind in ('FLATTEN', 'CUT', 'TRUE', 'FIT', 'GLUE', 'UNCLAMP', 'SQUARE_UP')),
    minutes integer     not null check (minutes between 1 and 480)
);

insert into step_minutes (kind, minutes) values ('FLATTEN', 20);
insert into step_minutes (kind, minutes) values ('CUT', 10);
insert into step_minutes (kind, minutes) values ('TRUE', 10);
insert into step_minutes (kind, minutes) values ('FIT', 20);
insert into step_minutes (kind, minutes) values ('GLUE', 15);
insert into step_minutes (kind, minutes) values ('UNCLAMP', 10);
insert into step_minutes (kind, minutes) values ('SQUARE_UP', 15);

-- Shop hours, Monday is 1; a break parts two stretches.
create table opening (
    weekday     integer not null check (weekday between 1 and 7),
    from_minute integer not null check (from_minute between 0 and 1439),
    to_minute   integer not null check (to_minute between 1 and 1440),
    primary key (weekday, from_minute),
    check (from_minute < to_minute)
);

insert into opening (weekday, from_minute, to_minute)
select d.weekday, s.from_minute, s.to_minute
from (select 1 as weekday union all select 2 union all select 3 union all select 4 union all select 5) d
cross join (select 480 as from_minute, 720 as to_minute union all select 780, 1020) s;

create table day_off (
    closed_on date        not null primary key,
    word      varchar(80) not null
);

-- Kinds of glue. The figures of the first four are common practice and were written from memory: the maker's sheet comes first.
create table glue (
    code                  varchar(20)  not null primary key,
    version               bigint       default 0 not null,
    name                  varchar(80)  not null,
    clamp_minutes         integer      not null check (clamp_minutes between 1 and 43200),
    cure_minutes          integer      not null check (cure_minutes between 1 and 43200),
    lowest_celsius_tenths integer      not null check (lowest_celsius_tenths between -100 and 500),
    open_minutes          integer      not null check (open_minutes between 1 and 480),
    common_practice       boolean      not null,
    check (clamp_minutes <= cure_minutes)
);

insert into glue (code, name, clamp_minutes, cure_minutes, lowest_celsius_tenths, open_minutes, common_practice)
values ('aliphatic', 'Aliphatic resin', 240, 1440, 100, 5, true);
insert into glue (code, name, clamp_minutes, cure_minutes, lowest_celsius_tenths, open_minutes, common_practice)
values ('epoxy', 'Epoxy, slow', 720, 1440, 150, 30, true);
insert into glue (code, name, clamp_minutes, cure_minutes, lowest_celsius_tenths, open_minutes, common_practice)
values ('hide', 'Hide glue, hot', 720, 1440, 200, 2, true);
insert into glue (code, name, clamp_minutes, cure_minutes, lowest_celsius_tenths, open_minutes, common_practice)
values ('urea', 'Urea resin', 480, 1440, 200, 15, true);

insert into workshop (id, hands, people, clamp_sets, celsius_tenths, glue_code, set_up_minutes)
values (1, 1, '', 3, 200, 'aliphatic', 20);

alter table workshop add constraint workshop_glue foreign key (glue_code) references glue (code);
