-- Lists of many pieces in each order they can be asked for, a page at a time.
create index piece_longest on piece (length_um desc, code_order);
create index piece_widest on piece (width_um desc, code_order);
create index piece_thickest on piece (thickness_um desc, code_order);
create index piece_newest on piece (since desc, code_order);
create index piece_oldest on piece (state, since, code_order);
create index piece_strip_species on piece_strip (species_id, piece_id);

-- Whether a piece was ever reserved.
create index act_kind_of_piece on act (piece_code, kind);
