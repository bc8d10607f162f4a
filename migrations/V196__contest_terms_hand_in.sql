-- Until when motors are handed in; empty where they stay with the team.
alter table contest_terms add column hand_in_at_ms bigint;
