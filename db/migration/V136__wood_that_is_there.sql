-- Counts and volumes of pieces by their state, off the index alone.
drop index piece_state;
create index piece_state on piece (state, length_um, width_um, thickness_um);
