-- What the team wants to do differently after an event: up to three lines, in their order.
create table review_change_line (
  event_id varchar(80) not null,
  place int not null,
  line varchar(200) not null,
  primary key (event_id, place)
);
-- Seasons that were begun, and the batches that were too old by then to be relied on without a new break test.
create table review_season (
  first_day varchar(10) primary key,
  at_ms bigint not null,
  person_id varchar(80)
);
create table review_aged_batch (
  batch_id varchar(80) primary key,
  since_day varchar(10) not null
);
