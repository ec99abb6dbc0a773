-- The file this shop was read from, so that the same file sent twice is read once.
create table shop_file_read (
    id      integer                  not null primary key check (id = 1),
    sha256  varchar(64)              not null,
    read_at timestamp with time zone not null
);
