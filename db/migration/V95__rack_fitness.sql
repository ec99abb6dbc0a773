-- Whether some design on file could have its neck, or its head, from a piece; judged when somebody asks, and stale when the key
-- is empty or another than that of the designs and rules there are now.
alter table piece add column fits_key varchar(64);
alter table piece add column fits_neck boolean;
alter table piece add column fits_head boolean;
