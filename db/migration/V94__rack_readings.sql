-- A second reading of warp, over the middle half of a piece; empty where nobody took one.
alter table piece add column middle_bow_um bigint check (middle_bow_um between 0 and 600000);
alter table piece add column middle_crook_um bigint check (middle_crook_um between 0 and 600000);
alter table piece add column middle_twist_um bigint check (middle_twist_um between 0 and 300000);

alter table warp_reading add column middle_bow_um bigint check (middle_bow_um between 0 and 600000);
alter table warp_reading add column middle_crook_um bigint check (middle_crook_um between 0 and 600000);
alter table warp_reading add column middle_twist_um bigint check (middle_twist_um between 0 and 300000);

-- Databases sort text by the rules of a language, and some of those pass over hyphens. This spells a code in digits and
-- capitals alone, so that every database sorts it alike: hyphen before digits before letters, as the signs are numbered.
alter table piece add column code_order varchar(24);
update piece set code_order = replace(replace(code, '0', '01'), '-', '00');
alter table piece alter column code_order set not null;
create index piece_code_order on piece (code_order);
