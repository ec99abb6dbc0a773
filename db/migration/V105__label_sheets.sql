-- Sheets of labels, and single labels of label printers: a page of the label's own size. The sizes a new shop begins with are
-- common ones, from memory; a person measures the sheet at hand and corrects them. Margins centre the labels on the paper.
create table label_sheet (
    code            varchar(20) not null primary key,
    version         bigint      default 0 not null,
    name            varchar(80) not null,
    paper           varchar(6)  not null check (paper in ('A4', 'LETTER', 'SINGLE')),
    across          integer     not null check (across between 1 and 20),
    down            integer     not null check (down between 1 and 40),
    left_um         bigint      not null check (left_um between 0 and 150000),
    top_um          bigint      not null check (top_um between 0 and 200000),
    pitch_across_um bigint      not null check (pitch_across_um between 0 and 220000),
    pitch_down_um   bigint      not null check (pitch_down_um between 0 and 300000),
    width_um        bigint      not null check (width_um between 24000 and 300000),
    height_um       bigint      not null check (height_um between 17000 and 300000),
    check ((width_um >= 38000 and height_um >= 17000) or (width_um >= 24000 and height_um >= 32000)),
    check (across = 1 or pitch_across_um >= width_um),
    check (down = 1 or pitch_down_um >= height_um),
    check (paper <> 'A4' or left_um + (across - 1) * pitch_across_um + width_um <= 210000),
    check (paper <> 'A4' or top_um + (down - 1) * pitch_down_um + height_um <= 297000),
    check (paper <> 'LETTER' or left_um + (across - 1) * pitch_across_um + width_um <= 215900),
    check (paper <> 'LETTER' or top_um + (down - 1) * pitch_down_um + height_um <= 279400),
    check (paper <> 'SINGLE' or (across = 1 and down = 1 and left_um = 0 and top_um = 0))
);

insert into label_sheet (code, name, paper, across, down, left_um, top_um, pitch_across_um, pitch_down_um, width_um, height_um)
values
    ('a4-14', '99.1 × 38.1 mm, 14 on A4', 'A4', 2, 7, 4650, 15150, 101600, 38100, 99100, 38100),
    ('a4-21', '63.5 × 38.1 mm, 21 on A4', 'A4', 3, 7, 7250, 15150, 66000, 38100, 63500, 38100),
    ('a4-65', '38.1 × 21.2 mm, 65 on A4', 'A4', 5, 13, 4750, 10700, 40600, 21200, 38100, 21200),
    ('letter-10', '4 × 2 in, 10 on Letter', 'LETTER', 2, 5, 3969, 12700, 106363, 50800, 101600, 50800),
    ('letter-30', '2 5/8 × 1 in, 30 on Letter', 'LETTER', 3, 10, 4763, 12700, 69850, 25400, 66675, 25400),
    ('single-50', '50 × 30 mm, single', 'SINGLE', 1, 1, 0, 0, 0, 0, 50000, 30000),
    ('single-57', '2 1/4 × 1 1/4 in, single', 'SINGLE', 1, 1, 0, 0, 0, 0, 57150, 31750),
    ('single-62', '62 × 29 mm, single', 'SINGLE', 1, 1, 0, 0, 0, 0, 62000, 29000);
