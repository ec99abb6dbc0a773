-- The far pages of long lists, off an index alone.
drop index piece_code_order;
create index piece_code_order on piece (code_order, id);
drop index piece_longest;
create index piece_longest on piece (length_um desc, code_order, id);
drop index piece_widest;
create index piece_widest on piece (width_um desc, code_order, id);
drop index piece_thickest;
create index piece_thickest on piece (thickness_um desc, code_order, id);
drop index piece_newest;
create index piece_newest on piece (since desc, code_order, id);

-- What pieces can be, in order of their codes, off an index alone.
drop index piece_fitness;
create index piece_fitness on piece (state, fits_key, fits_neck, fits_head, code_order, id);
