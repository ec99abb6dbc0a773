-- The shop's rules: one row. Defaults are common practice, no single source. Where published figures differ, as for the
-- shortest machined piece (200 to 300 mm), the safer end is taken.
create table shop_settings (
    id                        integer      not null primary key check (id = 1),
    version                   bigint       not null default 0,
    length_unit               varchar(8)   not null check (length_unit in ('MM', 'CM', 'INCH')),
    currency                  varchar(8)   not null,
    planing_per_face_um       bigint       not null check (planing_per_face_um between 0 and 10000),
    edge_allowance_um         bigint       not null check (edge_allowance_um between 0 and 50000),
    neck_straightness_um      bigint       not null check (neck_straightness_um between 0 and 20000),
    shortest_machined_um      bigint       not null check (shortest_machined_um between 0 and 1000000),
    usable_rest_length_um     bigint       not null check (usable_rest_length_um between 1000 and 6000000),
    usable_rest_width_um      bigint       not null check (usable_rest_width_um between 1000 and 1200000),
    neck_grain_slope          integer      not null check (neck_grain_slope between 1 and 100),
    driest_mc_hundredths      integer      not null check (driest_mc_hundredths between 0 and 3000),
    wettest_mc_hundredths     integer      not null check (wettest_mc_hundredths between 0 and 3000),
    moisture_apart_hundredths integer      not null check (moisture_apart_hundredths between 0 and 3000),
    check (driest_mc_hundredths < wettest_mc_hundredths)
);

insert into shop_settings (
    id, length_unit, currency, planing_per_face_um, edge_allowance_um, neck_straightness_um, shortest_machined_um,
    usable_rest_length_um, usable_rest_width_um, neck_grain_slope, driest_mc_hundredths, wettest_mc_hundredths,
    moisture_apart_hundredths)
values (1, 'MM', 'EUR', 1000, 2000, 1000, 300000, 120000, 40000, 15, 600, 1000, 200);

-- Saws, in the shop's order of preference. Sizes and kerfs of common bench machines, common practice.
create table saw (
    code               varchar(20) not null primary key,
    version            bigint      not null default 0,
    preference         integer     not null unique check (preference >= 1),
    name               varchar(80) not null,
    kind               varchar(8)  not null check (kind in ('MITRE', 'BAND', 'TABLE', 'HAND')),
    kerf_um            bigint      not null check (kerf_um between 100 and 10000),
    depth_um           bigint      not null check (depth_um between 1000 and 1200000),
    reach_um           bigint      not null check (reach_um between 1000 and 6000000),
    shallowest_mdeg    integer     not null check (shallowest_mdeg between 1000 and 45000),
    steepest_mdeg      integer     not null check (steepest_mdeg between 1000 and 45000),
    truing_um          bigint      not null check (truing_um between 0 and 20000),
    check (shallowest_mdeg <= steepest_mdeg)
);

insert into saw (code, preference, name, kind, kerf_um, depth_um, reach_um, shallowest_mdeg, steepest_mdeg, truing_um)
values ('band', 1, 'Band saw with a wedge jig', 'BAND', 1000, 150000, 1000000, 3000, 45000, 1500);
insert into saw (code, preference, name, kind, kerf_um, depth_um, reach_um, shallowest_mdeg, steepest_mdeg, truing_um)
values ('mitre', 2, 'Mitre saw with a square fence jig', 'MITRE', 2800, 90000, 150000, 3000, 45000, 1000);
insert into saw (code, preference, name, kind, kerf_um, depth_um, reach_um, shallowest_mdeg, steepest_mdeg, truing_um)
values ('table', 3, 'Table saw with a wedge jig', 'TABLE', 3000, 80000, 600000, 5000, 30000, 1000);
insert into saw (code, preference, name, kind, kerf_um, depth_um, reach_um, shallowest_mdeg, steepest_mdeg, truing_um)
values ('hand', 4, 'Hand saw with a ramp block', 'HAND', 800, 300000, 400000, 3000, 45000, 2500);

-- How the shop was started: one row. An empty database has not been started yet.
create table shop_start (
    id         integer     not null primary key check (id = 1),
    state      varchar(12) not null check (state in ('NOT_STARTED', 'EMPTY', 'DEMO')),
    started_at timestamp with time zone,
    check ((state = 'NOT_STARTED') = (started_at is null))
);

insert into shop_start (id, state) values (1, 'NOT_STARTED');
