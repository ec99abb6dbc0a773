-- The last times recorded of a kind of step, read off one index in their order.
create index work_step_last_recorded on work_step (kind, done_at desc, id desc);

-- What the pieces that are there were judged to be.
create index piece_fitness on piece (state, fits_key, fits_neck, fits_head);
