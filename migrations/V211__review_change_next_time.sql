-- What the team wants to do differently after an event: up to three lines, in their order.
create table review_change_line (
  event_id varchar(80) not null,
  place int not null,
  line varchar(200) not null,
  primary key (event_id, place)
);
