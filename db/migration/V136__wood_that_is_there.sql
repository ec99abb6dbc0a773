-- Counts and volumes of pieces by their state, off the index alone.
drop index piece_state;
create index piece_state on piece (state, length_um, width_um, thickness_um);

-- Which places hold a piece that is there.
create index piece_place_state on piece (place_id, state);
