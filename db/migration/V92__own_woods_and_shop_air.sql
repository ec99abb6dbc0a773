-- Woods a shop adds itself, beside the published ones, and the air wood lies in.
alter table species add column entered_by_shop boolean default false not null;
alter table species add column version bigint default 0 not null;

-- The shop's air: what the hygrometer shows now, if anybody read it, and the driest and dampest air of the year. The defaults
-- of the year are a heated room in winter and the same room in summer, common practice. Ranges are those of the published
-- table of equilibrium moisture.
create table shop_air (
    id                  integer not null primary key check (id = 1),
    version             bigint  default 0 not null,
    now_celsius_tenths  integer check (now_celsius_tenths between -11 and 544),
    now_rh_tenths       integer check (now_rh_tenths between 50 and 900),
    now_read_on         date,
    dry_celsius_tenths  integer not null check (dry_celsius_tenths between -11 and 544),
    dry_rh_tenths       integer not null check (dry_rh_tenths between 50 and 900),
    damp_celsius_tenths integer not null check (damp_celsius_tenths between -11 and 544),
    damp_rh_tenths      integer not null check (damp_rh_tenths between 50 and 900),
    check ((now_celsius_tenths is null) = (now_rh_tenths is null)),
    check ((now_celsius_tenths is null) = (now_read_on is null))
);

insert into shop_air (id, dry_celsius_tenths, dry_rh_tenths, damp_celsius_tenths, damp_rh_tenths)
values (1, 200, 350, 220, 600);
