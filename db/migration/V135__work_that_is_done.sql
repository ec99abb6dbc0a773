-- What was done in some days, without going through the steps of every year.
create index work_step_done on work_step (done_at);
