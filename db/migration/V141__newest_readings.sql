-- The newest readings of all pieces, without putting all of them in order.
create index moisture_reading_newest on moisture_reading (read_on desc, id desc);
create index warp_reading_newest on warp_reading (read_on desc, id desc);
