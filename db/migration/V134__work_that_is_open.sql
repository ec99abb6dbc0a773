-- What is left to do, without going through the steps of every year.
create index work_step_open on work_step (state, plan_id);

-- Plans of a span of weeks, without their documents.
create index plan_accepted on plan (state, week, id);
