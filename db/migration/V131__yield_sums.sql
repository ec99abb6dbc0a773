-- What the yield adds up to, kept with every entry so that a report of many years need not add all outcomes up again. All of it
-- follows from the ledger: the program makes it anew when it starts and finds it out of step, and the check of the ledger holds it
-- against the outcomes.

-- Sums of one figure. by_what DAY: of one day; else of one month, for one wood, lot, design or person. The figure TAKEN is what
-- the pieces lost by their sizes; RESCUED is part of PARTS.
create table yield_sum (
    by_what        varchar(6)     not null check (by_what in ('DAY', 'WOOD', 'LOT', 'DESIGN', 'PERSON')),
    begins         date           not null,
    line_key       varchar(1700)  not null,
    figure         varchar(12)    not null,
    outcomes       bigint         not null check (outcomes >= 0),
    real_um3       numeric(30, 0) not null,
    planned_um3    numeric(30, 0) not null,
    comparable_um3 numeric(30, 0) not null,
    primary key (by_what, begins, line_key, figure)
);

create index yield_sum_line on yield_sum (by_what, line_key, begins);

-- What the pieces that were cut are made of and came in, as it was counted.
create table yield_wood (
    piece_code varchar(12)   not null primary key,
    wood_key   varchar(1700) not null,
    lot_code   varchar(60)   not null
);

-- Necks of which both parts are cut, on the day of the last one. Without a cost: nobody knows what some of the wood cost.
create table yield_neck (
    plan_id     bigint      not null,
    order_code  varchar(40) not null,
    neck_number integer     not null,
    design_code varchar(40) not null,
    cut_on      date        not null,
    cost_cents  bigint,
    primary key (plan_id, order_code, neck_number)
);

create index yield_neck_day on yield_neck (cut_on, design_code, cost_cents);

-- Cuts that had a plan, with the waste it foresaw and the waste there was.
create table yield_cut (
    entry_id    bigint         not null primary key references entry (id),
    cut_on      date           not null,
    planned_um3 numeric(30, 0) not null,
    real_um3    numeric(30, 0) not null
);

create index yield_cut_day on yield_cut (cut_on, entry_id);

-- Up to which entry all of this was added up, and by the days of which place.
create table yield_kept (
    id       integer     not null primary key check (id = 1),
    entry_id bigint      not null,
    zone     varchar(60) not null
);

insert into yield_kept (id, entry_id, zone) values (1, 0, '');
