-- What was begun in one week and done in another, off the index alone.
drop index work_step_done;
create index work_step_done on work_step (done_at, started_at);

-- Which joints were glued in some weeks, off the index alone.
drop index work_step_recorded;
create index work_step_recorded on work_step (kind, done_at, plan_id, order_code, neck_number);
