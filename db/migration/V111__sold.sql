-- A piece may be sold. The list of states stands in a check without a name, which no two databases name alike, so the column is
-- made anew.
drop index piece_state;
alter table piece add column state_kept varchar(12);
update piece set state_kept = state;
alter table piece drop column state;
alter table piece add column state varchar(12) default 'ON_RACK' not null;
update piece set state = state_kept;
alter table piece drop column state_kept;
alter table piece add constraint piece_state_known
    check (state in ('ON_RACK', 'RESERVED', 'AT_BENCH', 'USED_UP', 'SCRAPPED', 'SOLD'));
create index piece_state on piece (state);
