-- Answers to acts that carried an Idempotency-Key, kept so that a repeated request does nothing twice.
create table repeated_request (
    request_key   varchar(200) primary key,
    fingerprint   char(64)     not null,
    status        integer      not null check (status between 200 and 299),
    content_type  varchar(200),
    location      varchar(500),
    etag          varchar(200),
    body          text         not null,
    answered_at   timestamp with time zone not null
);

create index repeated_request_age on repeated_request (answered_at);
