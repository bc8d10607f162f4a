-- A watch whose device failed can go to another device; what the first one still sends is kept as well.
alter table attempt_watch drop primary key;
alter table attempt_watch add primary key (attempt_id, slot, device);
alter table attempt_watch add column given_over boolean default false not null;
