-- One entry is one doing of a person: a cut, a move of five pieces. It has acts, one for each piece it touched, each with the
-- whole state of the piece afterwards as a document, and outcomes, which say what became of the wood. Rows are only ever added.
-- Each entry holds the hash of the one before it; the kinds are the program's and are read strictly, so no list stands here.
--
-- Acts written before there were entries are carried over when the program starts.
drop index act_piece;
alter table act rename to act_before_entries;

create table entry (
    id        bigint                   not null primary key check (id >= 1),
    kind      varchar(12)              not null,
    acted_at  timestamp with time zone not null,
    who       varchar(120)             not null,
    why       varchar(2000)            not null,
    undoes    bigint                   unique references entry (id),
    prev_hash varchar(64)              not null,
    hash      varchar(64)              not null
);

create index entry_person on entry (who, id);

create table act (
    entry_id          bigint         not null references entry (id),
    position          integer        not null check (position >= 1),
    kind              varchar(12)    not null,
    piece_code        varchar(12)    not null,
    volume_before_um3 numeric(30, 0) not null check (volume_before_um3 >= 0),
    volume_after_um3  numeric(30, 0) not null check (volume_after_um3 >= 0),
    plan_id           bigint,
    detail            varchar(2000)  not null,
    -- empty text: the piece is not there any more; null: an act from before documents were kept
    document          varchar(1000000),
    primary key (entry_id, position)
);

create index act_piece on act (piece_code, entry_id, position);

-- What became of the wood an entry took from a piece. Figures of an entry that is undone stand again with the other sign, so
-- that sums over all rows are true.
create table outcome (
    entry_id     bigint         not null references entry (id),
    position     integer        not null check (position >= 1),
    kind         varchar(12)    not null,
    cause        varchar(12),
    from_piece   varchar(12)    not null,
    to_piece     varchar(12),
    volume_um3   numeric(30, 0) not null,
    planned_um3  numeric(30, 0),
    cost_cents   bigint,
    plan_id      bigint,
    order_code   varchar(40),
    neck_number  integer        check (neck_number >= 1),
    design_code  varchar(40),
    part         varchar(4)     check (part in ('NECK', 'HEAD')),
    length_um    bigint         check (length_um > 0),
    width_um     bigint         check (width_um > 0),
    thickness_um bigint         check (thickness_um > 0),
    primary key (entry_id, position),
    check ((order_code is null) = (neck_number is null)),
    check ((order_code is null) = (part is null))
);

create index outcome_from on outcome (from_piece, entry_id);
create index outcome_to on outcome (to_piece);
create index outcome_neck on outcome (plan_id, order_code, neck_number);

-- The end of the chain. Whoever writes an entry locks this row first, so that the chain has no forks.
create table ledger_head (
    id       integer     not null primary key check (id = 1),
    entry_id bigint      not null check (entry_id >= 0),
    hash     varchar(64) not null
);

insert into ledger_head (id, entry_id, hash)
values (1, 0, '0000000000000000000000000000000000000000000000000000000000000000');

-- What all acts of one kind brought in and took out, so that nobody has to add a million of them up to show a page.
create table balance_line (
    kind    varchar(12)    not null primary key,
    acts    bigint         not null check (acts >= 0),
    in_um3  numeric(30, 0) not null check (in_um3 >= 0),
    out_um3 numeric(30, 0) not null check (out_um3 >= 0)
);
