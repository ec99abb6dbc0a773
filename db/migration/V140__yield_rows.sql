-- What every outcome of an entry that stands counts as: the rows behind each figure, and what days beside whole months are added up
-- from. An outcome that several designs share is a row of each of them. As all the yield keeps it follows from the ledger and is held
-- against it by its check.
create table yield_row (
    entry_id    bigint         not null references entry (id),
    position    integer        not null,
    -- empty: for no neck
    design_code varchar(40)    not null,
    counted_on  date           not null,
    acted_at    timestamp with time zone not null,
    wood_key    varchar(1700)  not null,
    lot_code    varchar(60)    not null,
    who         varchar(120)   not null,
    figure      varchar(12)    not null,
    rescued     boolean        not null,
    counted_um3 numeric(30, 0) not null,
    planned_um3 numeric(30, 0),
    primary key (entry_id, position, design_code)
);

create index yield_row_day on yield_row (counted_on);
create index yield_row_wood on yield_row (wood_key, counted_on);
create index yield_row_lot on yield_row (lot_code, counted_on);
create index yield_row_design on yield_row (design_code, counted_on);
create index yield_row_person on yield_row (who, counted_on);

-- Sums of all figures, now one row for all of them, so that a cut changes few rows and a report of many lots reads few. by_what DAY:
-- of one day; else of one month, for one wood, lot, design or person, and once more of all months, under 9999-12-31. Of
-- each figure: how many outcomes, how many of them a plan said something of, what was really recorded, what the plans said, and what
-- was recorded of what they said something of. taken: what the pieces lost by their sizes, and sold: what was sold as it is, both of days alone. rescued is part
-- of parts.
drop table yield_sum;

create table yield_sum (
    by_what                     varchar(6)     not null check (by_what in ('DAY', 'WOOD', 'LOT', 'DESIGN', 'PERSON')),
    begins                      date           not null,
    line_key                    varchar(1700)  not null,
    taken_um3                   numeric(30, 0) not null,
    sold_um3                    numeric(30, 0) not null,
    parts_outcomes              bigint         not null check (parts_outcomes >= 0),
    parts_with_plan             bigint         not null check (parts_with_plan >= 0),
    parts_real_um3              numeric(30, 0) not null,
    parts_planned_um3           numeric(30, 0) not null,
    parts_comparable_um3        numeric(30, 0) not null,
    rests_outcomes              bigint         not null check (rests_outcomes >= 0),
    rests_with_plan             bigint         not null check (rests_with_plan >= 0),
    rests_real_um3              numeric(30, 0) not null,
    rests_planned_um3           numeric(30, 0) not null,
    rests_comparable_um3        numeric(30, 0) not null,
    kerf_outcomes               bigint         not null check (kerf_outcomes >= 0),
    kerf_with_plan              bigint         not null check (kerf_with_plan >= 0),
    kerf_real_um3               numeric(30, 0) not null,
    kerf_planned_um3            numeric(30, 0) not null,
    kerf_comparable_um3         numeric(30, 0) not null,
    bevel_outcomes              bigint         not null check (bevel_outcomes >= 0),
    bevel_with_plan             bigint         not null check (bevel_with_plan >= 0),
    bevel_real_um3              numeric(30, 0) not null,
    bevel_planned_um3           numeric(30, 0) not null,
    bevel_comparable_um3        numeric(30, 0) not null,
    edge_outcomes               bigint         not null check (edge_outcomes >= 0),
    edge_with_plan              bigint         not null check (edge_with_plan >= 0),
    edge_real_um3               numeric(30, 0) not null,
    edge_planned_um3            numeric(30, 0) not null,
    edge_comparable_um3         numeric(30, 0) not null,
    trim_outcomes               bigint         not null check (trim_outcomes >= 0),
    trim_with_plan              bigint         not null check (trim_with_plan >= 0),
    trim_real_um3               numeric(30, 0) not null,
    trim_planned_um3            numeric(30, 0) not null,
    trim_comparable_um3         numeric(30, 0) not null,
    planing_outcomes            bigint         not null check (planing_outcomes >= 0),
    planing_with_plan           bigint         not null check (planing_with_plan >= 0),
    planing_real_um3            numeric(30, 0) not null,
    planing_planned_um3         numeric(30, 0) not null,
    planing_comparable_um3      numeric(30, 0) not null,
    small_rests_outcomes        bigint         not null check (small_rests_outcomes >= 0),
    small_rests_with_plan       bigint         not null check (small_rests_with_plan >= 0),
    small_rests_real_um3        numeric(30, 0) not null,
    small_rests_planned_um3     numeric(30, 0) not null,
    small_rests_comparable_um3  numeric(30, 0) not null,
    spoilt_outcomes             bigint         not null check (spoilt_outcomes >= 0),
    spoilt_with_plan            bigint         not null check (spoilt_with_plan >= 0),
    spoilt_real_um3             numeric(30, 0) not null,
    spoilt_planned_um3          numeric(30, 0) not null,
    spoilt_comparable_um3       numeric(30, 0) not null,
    scrapped_outcomes           bigint         not null check (scrapped_outcomes >= 0),
    scrapped_with_plan          bigint         not null check (scrapped_with_plan >= 0),
    scrapped_real_um3           numeric(30, 0) not null,
    scrapped_planned_um3        numeric(30, 0) not null,
    scrapped_comparable_um3     numeric(30, 0) not null,
    unexplained_outcomes        bigint         not null check (unexplained_outcomes >= 0),
    unexplained_with_plan       bigint         not null check (unexplained_with_plan >= 0),
    unexplained_real_um3        numeric(30, 0) not null,
    unexplained_planned_um3     numeric(30, 0) not null,
    unexplained_comparable_um3  numeric(30, 0) not null,
    rescued_outcomes            bigint         not null check (rescued_outcomes >= 0),
    rescued_with_plan           bigint         not null check (rescued_with_plan >= 0),
    rescued_real_um3            numeric(30, 0) not null,
    rescued_planned_um3         numeric(30, 0) not null,
    rescued_comparable_um3      numeric(30, 0) not null,
    primary key (by_what, begins, line_key)
);

create index yield_sum_line on yield_sum (by_what, line_key, begins);

-- Both are filled by adding everything up anew.
update yield_kept set entry_id = 0 where id = 1;
