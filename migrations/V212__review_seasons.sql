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
