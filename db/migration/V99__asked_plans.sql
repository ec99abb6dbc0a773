-- Plans that come from another plan: near-equal ones, orders of a plan that were locked, and what was matched anew beside
-- them. And what a search was asked for: a week, plans near to one there is, or the remainder beside locked orders.
alter table plan add column origin_id bigint references plan (id);
alter table plan add column origin_kind varchar(10) check (origin_kind in ('NEAR_EQUAL', 'LOCKED', 'REMAINDER'));
alter table plan add constraint plan_origin_whole check ((origin_id is null) = (origin_kind is null));

create index plan_origin on plan (origin_id, id);

alter table match_run add column kind varchar(10) default 'MATCH' not null check (kind in ('MATCH', 'NEAR_EQUAL', 'REMAINDER'));
alter table match_run add column origin_id bigint references plan (id);
alter table match_run add constraint match_run_origin_whole check ((kind = 'MATCH') = (origin_id is null));

create index match_run_origin on match_run (origin_id, id);
