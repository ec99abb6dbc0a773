-- What can be read on a saw's scale, or told apart on its jig: half a degree on most, common practice.
alter table saw add column scale_mdeg integer default 500 not null check (scale_mdeg between 10 and 5000);
