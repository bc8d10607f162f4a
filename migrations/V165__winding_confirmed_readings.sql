-- Doubtful readings of which somebody said that they were so.
create table winding_confirmed (
  mark_id varchar(80) primary key,
  wind_id varchar(80) not null
);
