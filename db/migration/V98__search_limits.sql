-- How long a search may take and how much memory it may take on top of what the program holds. Choices of this program.
alter table shop_settings add column search_seconds integer default 20 not null check (search_seconds between 1 and 600);
alter table shop_settings add column search_memory_mb integer default 2048 not null check (search_memory_mb between 64 and 65536);
