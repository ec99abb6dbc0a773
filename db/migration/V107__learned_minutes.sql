-- Whether a kind of step is laid with the minutes people recorded, once there are enough of them, or always with the shop's own.
alter table step_minutes add column learns boolean default true not null;

-- The last times recorded of a kind of step.
create index work_step_recorded on work_step (kind, done_at);
