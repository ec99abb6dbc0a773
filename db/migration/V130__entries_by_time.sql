-- Entries of a span of time, and the first one after a day, without looking at all of them.
create index entry_time on entry (acted_at, id);
