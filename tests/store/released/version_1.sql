-- A kitchen as layout version 1 wrote it: thirty commands of the chain in tests/support/chain.hpp. Made with
-- 'sqlite3 kitchen.db .dump', and never changed since: later versions have to read it.
PRAGMA foreign_keys=OFF;
BEGIN TRANSACTION;
CREATE TABLE command (
    number INTEGER PRIMARY KEY,
    day INTEGER NOT NULL CHECK (day BETWEEN -719162 AND 2932896),
    name TEXT NOT NULL CHECK (name <> ''),
    line TEXT NOT NULL,
    undoes INTEGER UNIQUE REFERENCES command (number) CHECK (undoes < number),
    seal INTEGER NOT NULL
) STRICT;
INSERT INTO command VALUES(1,20454,'cooked','cooked cabbage rice for 7',NULL,3056281830730861155);
INSERT INTO command VALUES(2,20454,'got','got 5 packs (638 g) peas into near-freezer, best by 2026-08-29 and 9 1/2 serves cold roast chicken into near-freezer, best by 2026-03-02',NULL,-3777911348996811813);
INSERT INTO command VALUES(3,20454,'count','counted crisper: eggs nothing -> 1 pack (12)',NULL,-2415479594856417679);
INSERT INTO command VALUES(4,20454,'got','got 4.73 packs (4.02 L) oil into pantry, best by 2027-01-01',NULL,-2067548183597959203);
INSERT INTO command VALUES(5,20454,'got','got lots beef mince into near-freezer, best by 2026-04-01 and some cold meat loaf into near-freezer, best by 2026-03-02',NULL,1168721406427008034);
INSERT INTO command VALUES(6,20454,'got','got 7 packs (700) onion into pantry, best by 2026-02-10 and 5 onion into near-freezer',NULL,1727998154883059736);
INSERT INTO command VALUES(7,20455,'cooked','cooked meat loaf for 4: 2.79 serves cold meat loaf into fridge, use by 2026-01-05',NULL,-8585780388416729527);
INSERT INTO command VALUES(8,20455,'got','got 1.1 kg flour into near-freezer and 5 packs (5 kg) peas into fridge, use by 2026-01-03',NULL,7780825614001879372);
INSERT INTO command VALUES(9,20455,'moved','moved 2.79 serves cold meat loaf, to freeze, best by 2026-03-03 to near-freezer',NULL,-3684535978264394853);
INSERT INTO command VALUES(10,20455,'undo','undid: moved 2.79 serves cold meat loaf, to freeze, best by 2026-03-03 to near-freezer',9,-7536407902626443493);
INSERT INTO command VALUES(11,20455,'ate','ate 1 1/2 serves cold meat loaf',NULL,5616457856510579058);
INSERT INTO command VALUES(12,20455,'tossed','tossed 5 kg peas and 638 g peas',NULL,-2093705453264670312);
INSERT INTO command VALUES(13,20456,'ate','ate 99.2 onion and 901 onion',NULL,-7042481160074830276);
INSERT INTO command VALUES(14,20456,'tossed','tossed 4.02 L oil',NULL,-2871515287988378380);
INSERT INTO command VALUES(15,20456,'count','counted crisper: eggs 0.933 packs (11.2) -> nothing',NULL,5098138229323693106);
INSERT INTO command VALUES(16,20456,'remember','remembered 1 past meal',NULL,-4556622979563400085);
INSERT INTO command VALUES(17,20456,'opened','opened 392 mL pasta sauce, use by 2026-01-08',NULL,-4263616722395492083);
INSERT INTO command VALUES(18,20456,'ate','ate 8 1/2 serves cold meat loaf and 1.1 kg flour',NULL,-7070961594018766058);
INSERT INTO command VALUES(19,20457,'got','got lots cabbage into fridge, best by 2026-01-18, 1/2 serves chicken carcass into near-freezer, best by 2026-03-05 and 8 eggs into crisper, use by 2026-02-01',NULL,-3590328432073659294);
INSERT INTO command VALUES(20,20457,'undo','undid: got lots cabbage into fridge, best by 2026-01-18, 1/2 serves chicken carcass into near-freezer, best by 2026-03-05 and 8 eggs into crisper, use by 2026-02-01',19,1661304832621607524);
INSERT INTO command VALUES(21,20457,'got','got 8.49 serves cold meat loaf into far-freezer, best by 2026-03-05 and 8 packs (96) eggs into crisper, use by 2026-02-01',NULL,3450185761249936142);
INSERT INTO command VALUES(22,20457,'got','got 1 pack (500 mL) pasta sauce into crisper',NULL,7927097749053770660);
INSERT INTO command VALUES(23,20457,'cooked','cooked roast chicken for 1: 0.889 serves cold roast chicken into near-freezer, best by 2026-03-05, 0.029 serves cold roast chicken into fridge, use by 2026-01-07 and 1/4 serves chicken carcass (roast chicken) into fridge, use by 2026-01-07',NULL,-1741589556198853789);
INSERT INTO command VALUES(24,20457,'cooked','cooked roast chicken for 8: 3.85 serves cold roast chicken into near-freezer, best by 2026-03-05, 0.296 serves cold roast chicken into fridge, use by 2026-01-07 and 2 serves chicken carcass (roast chicken) into fridge, use by 2026-01-07',NULL,-1974792502871088877);
INSERT INTO command VALUES(25,20458,'cooked','cooked omelette for 1',NULL,7393815974345683469);
INSERT INTO command VALUES(26,20458,'cooked','cooked cabbage rice for 8',NULL,3494437331211223411);
INSERT INTO command VALUES(27,20458,'ate','ate 5 onion',NULL,-4986873649764274596);
INSERT INTO command VALUES(28,20458,'got','got 1.05 kg peas into fridge, use by 2026-01-05',NULL,-2257696112892552735);
INSERT INTO command VALUES(29,20458,'got','got 1.29 kg whole chicken into near-freezer, best by 2026-10-02 and 5 packs (10 kg) rice into near-freezer',NULL,-7573510759634635866);
INSERT INTO command VALUES(30,20458,'undo','undid: got 1.29 kg whole chicken into near-freezer, best by 2026-10-02 and 5 packs (10 kg) rice into near-freezer',29,-8093430393251000990);
CREATE TABLE lot (
    number INTEGER PRIMARY KEY CHECK (number > 0),
    ingredient TEXT NOT NULL CHECK (ingredient <> ''),
    dish TEXT,
    arrived INTEGER NOT NULL,
    dimension TEXT NOT NULL CHECK (dimension IN ('mass', 'volume', 'pieces')),
    last_entry INTEGER,
    place TEXT NOT NULL DEFAULT '',
    amount INTEGER NOT NULL DEFAULT 0 CHECK (amount >= 0),
    rough TEXT,
    packs TEXT NOT NULL DEFAULT '',
    part_of INTEGER NOT NULL DEFAULT 0,
    state TEXT NOT NULL DEFAULT 'fresh',
    since INTEGER NOT NULL DEFAULT 0,
    opened_on INTEGER,
    thaw TEXT,
    thawed_on INTEGER,
    printed_use_by INTEGER,
    use_by INTEGER,
    best_by INTEGER,
    paid INTEGER,
    paid_for INTEGER NOT NULL DEFAULT 0,
    note TEXT NOT NULL DEFAULT ''
) STRICT;
INSERT INTO lot VALUES(1,'cabbage',NULL,20454,'pieces',2,'crisper',0,NULL,'',0,'fresh',20454,NULL,NULL,NULL,NULL,NULL,20475,NULL,0,'');
INSERT INTO lot VALUES(2,'rice',NULL,20454,'mass',4,'pantry',0,NULL,'',0,'fresh',20454,NULL,NULL,NULL,NULL,NULL,21154,NULL,0,'');
INSERT INTO lot VALUES(3,'peas',NULL,20454,'mass',27,'near-freezer',0,NULL,'',0,'frozen',20454,NULL,NULL,NULL,20465,NULL,20694,1281,638000,'');
INSERT INTO lot VALUES(4,'cold-roast-chicken',NULL,20454,'pieces',6,'near-freezer',9500,NULL,'',0,'frozen',20454,NULL,NULL,NULL,20465,NULL,20514,2588,9500,'');
INSERT INTO lot VALUES(5,'eggs',NULL,20454,'pieces',32,'crisper',0,NULL,'',0,'fresh',20454,20455,NULL,NULL,NULL,20457,NULL,NULL,0,'');
INSERT INTO lot VALUES(6,'oil',NULL,20454,'volume',31,'pantry',0,NULL,'',0,'fresh',20454,NULL,NULL,NULL,NULL,NULL,20819,NULL,0,'');
INSERT INTO lot VALUES(7,'beef-mince',NULL,20454,'mass',9,'near-freezer',0,'lots','',0,'frozen',20454,NULL,NULL,NULL,NULL,NULL,20544,2740,0,'');
INSERT INTO lot VALUES(8,'cold-meat-loaf',NULL,20454,'pieces',10,'near-freezer',0,'some','',0,'frozen',20454,NULL,NULL,NULL,20459,NULL,20514,2084,0,'');
INSERT INTO lot VALUES(9,'onion',NULL,20454,'pieces',30,'pantry',0,NULL,'',0,'fresh',20454,NULL,NULL,NULL,NULL,NULL,20494,18,700000,'it''s "special", größer');
INSERT INTO lot VALUES(10,'onion',NULL,20454,'pieces',72,'near-freezer',0,NULL,'',0,'frozen',20454,NULL,NULL,NULL,NULL,NULL,NULL,1381,5000,'');
INSERT INTO lot VALUES(11,'onion',NULL,20454,'pieces',29,'pantry',0,NULL,'',0,'fresh',20454,20455,NULL,NULL,NULL,NULL,20462,18,700000,'it''s "special", größer');
INSERT INTO lot VALUES(12,'cold-meat-loaf','meat-loaf',20455,'pieces',36,'fridge',0,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,20458,NULL,808,2786,'');
INSERT INTO lot VALUES(13,'flour',NULL,20455,'mass',37,'near-freezer',0,NULL,'',0,'frozen',20455,NULL,NULL,NULL,NULL,NULL,NULL,NULL,0,'');
INSERT INTO lot VALUES(14,'peas',NULL,20455,'mass',26,'fridge',0,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,20456,NULL,728,5000000,'');
INSERT INTO lot VALUES(15,'pasta-sauce',NULL,20456,'volume',34,'pantry',392000,NULL,'',0,'fresh',20456,20456,NULL,NULL,NULL,20461,20821,NULL,0,'');
INSERT INTO lot VALUES(16,'cabbage',NULL,20457,'pieces',43,'fridge',0,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,NULL,20471,1579,0,'');
INSERT INTO lot VALUES(17,'chicken-carcass',NULL,20457,'pieces',42,'near-freezer',0,NULL,'',0,'frozen',20457,NULL,NULL,NULL,NULL,NULL,20517,NULL,0,'');
INSERT INTO lot VALUES(18,'eggs',NULL,20457,'pieces',41,'crisper',0,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20485,NULL,NULL,0,'');
INSERT INTO lot VALUES(19,'cold-meat-loaf',NULL,20457,'pieces',44,'far-freezer',8488,NULL,'',0,'frozen',20457,NULL,NULL,NULL,20462,NULL,20517,NULL,0,'');
INSERT INTO lot VALUES(20,'eggs',NULL,20457,'pieces',61,'crisper',84000,NULL,'12000,12000,12000,12000,12000,12000,12000',0,'fresh',20457,NULL,NULL,NULL,NULL,20485,NULL,2919,96000,'');
INSERT INTO lot VALUES(21,'pasta-sauce',NULL,20457,'volume',46,'crisper',500000,NULL,'500000',0,'fresh',20457,NULL,NULL,NULL,NULL,NULL,NULL,2444,500000,'');
INSERT INTO lot VALUES(22,'whole-chicken',NULL,20457,'mass',48,'fridge',0,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20459,NULL,NULL,0,'');
INSERT INTO lot VALUES(23,'peas',NULL,20457,'mass',50,'fridge',0,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20458,NULL,NULL,0,'');
INSERT INTO lot VALUES(24,'cold-roast-chicken','roast-chicken',20457,'pieces',51,'near-freezer',889,NULL,'',0,'frozen',20457,NULL,NULL,NULL,NULL,NULL,20517,252,889,'');
INSERT INTO lot VALUES(25,'cold-roast-chicken','roast-chicken',20457,'pieces',52,'fridge',29,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20460,NULL,8,29,'');
INSERT INTO lot VALUES(26,'chicken-carcass','roast-chicken',20457,'pieces',53,'fridge',250,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20460,NULL,NULL,0,'');
INSERT INTO lot VALUES(27,'whole-chicken',NULL,20457,'mass',55,'fridge',0,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20459,NULL,NULL,0,'');
INSERT INTO lot VALUES(28,'peas',NULL,20457,'mass',57,'fridge',0,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20458,NULL,NULL,0,'');
INSERT INTO lot VALUES(29,'cold-roast-chicken','roast-chicken',20457,'pieces',58,'near-freezer',3853,NULL,'',0,'frozen',20457,NULL,NULL,NULL,NULL,NULL,20517,1094,3853,'');
INSERT INTO lot VALUES(30,'cold-roast-chicken','roast-chicken',20457,'pieces',59,'fridge',296,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20460,NULL,84,296,'');
INSERT INTO lot VALUES(31,'chicken-carcass','roast-chicken',20457,'pieces',60,'fridge',2000,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20460,NULL,NULL,0,'');
INSERT INTO lot VALUES(32,'eggs',NULL,20457,'pieces',63,'crisper',9500,NULL,'9500',12000,'fresh',20457,20458,NULL,NULL,NULL,20460,NULL,2919,96000,'');
INSERT INTO lot VALUES(33,'milk',NULL,20458,'volume',65,'fridge',0,NULL,'',0,'fresh',20458,NULL,NULL,NULL,NULL,20466,NULL,NULL,0,'');
INSERT INTO lot VALUES(34,'peas',NULL,20458,'mass',67,'fridge',0,NULL,'',0,'fresh',20458,NULL,NULL,NULL,NULL,20459,NULL,NULL,0,'');
INSERT INTO lot VALUES(35,'cabbage',NULL,20458,'pieces',69,'crisper',0,NULL,'',0,'fresh',20458,NULL,NULL,NULL,NULL,NULL,20479,NULL,0,'');
INSERT INTO lot VALUES(36,'rice',NULL,20458,'mass',71,'pantry',0,NULL,'',0,'fresh',20458,NULL,NULL,NULL,NULL,NULL,21158,NULL,0,'');
INSERT INTO lot VALUES(37,'peas',NULL,20458,'mass',73,'fridge',1054575,NULL,'',0,'fresh',20458,NULL,NULL,NULL,20458,20458,NULL,249,1054575,'');
INSERT INTO lot VALUES(38,'whole-chicken',NULL,20458,'mass',77,'near-freezer',0,NULL,'',0,'frozen',20458,NULL,NULL,NULL,NULL,NULL,20728,1545,1285628,'');
INSERT INTO lot VALUES(39,'rice',NULL,20458,'mass',76,'near-freezer',0,NULL,'',0,'frozen',20458,NULL,NULL,NULL,20462,NULL,NULL,2060,10000000,'');
CREATE TABLE entry (
    number INTEGER PRIMARY KEY,
    command INTEGER NOT NULL REFERENCES command (number),
    kind TEXT NOT NULL CHECK (kind IN ('got', 'moved', 'thawing', 'opened', 'cooked', 'eaten', 'tossed', 'found', 'lost',
                                       'undone')),
    counts_as TEXT NOT NULL CHECK (counts_as IN ('none', 'in', 'moved-in', 'found', 'used', 'tossed', 'lost', 'moved-out')),
    day INTEGER NOT NULL,
    lot INTEGER NOT NULL REFERENCES lot (number),
    at_place TEXT NOT NULL CHECK (at_place <> ''),
    delta INTEGER NOT NULL,
    reason TEXT NOT NULL,
    undoes INTEGER UNIQUE REFERENCES entry (number) CHECK (undoes < number),
    place TEXT NOT NULL CHECK (place <> ''),
    amount INTEGER NOT NULL CHECK (amount >= 0),
    rough TEXT CHECK (rough IN ('some', 'low', 'lots')),
    packs TEXT NOT NULL,
    part_of INTEGER NOT NULL CHECK (part_of >= 0),
    state TEXT NOT NULL CHECK (state IN ('fresh', 'frozen', 'thawing', 'thawed')),
    since INTEGER NOT NULL,
    opened_on INTEGER,
    thaw TEXT CHECK (thaw IN ('fridge', 'cold-water', 'microwave')),
    thawed_on INTEGER,
    printed_use_by INTEGER,
    use_by INTEGER,
    best_by INTEGER,
    paid INTEGER,
    paid_for INTEGER NOT NULL CHECK (paid_for >= 0),
    note TEXT NOT NULL,
    CHECK (rough IS NULL OR amount = 0),
    CHECK (counts_as <> 'none' OR delta = 0),
    CHECK ((kind = 'undone') = (undoes IS NOT NULL)),
    CHECK (kind = 'undone' OR delta = 0 OR (delta > 0) = (counts_as IN ('in', 'moved-in', 'found')))
) STRICT;
INSERT INTO entry VALUES(1,1,'found','found',20454,1,'crisper',875,'not known to be there',NULL,'crisper',875,NULL,'',0,'fresh',20454,NULL,NULL,NULL,NULL,NULL,20475,NULL,0,'');
INSERT INTO entry VALUES(2,1,'cooked','used',20454,1,'crisper',-875,'',NULL,'crisper',0,NULL,'',0,'fresh',20454,NULL,NULL,NULL,NULL,NULL,20475,NULL,0,'');
INSERT INTO entry VALUES(3,1,'found','found',20454,2,'pantry',525000,'not known to be there',NULL,'pantry',525000,NULL,'',0,'fresh',20454,NULL,NULL,NULL,NULL,NULL,21154,NULL,0,'');
INSERT INTO entry VALUES(4,1,'cooked','used',20454,2,'pantry',-525000,'',NULL,'pantry',0,NULL,'',0,'fresh',20454,NULL,NULL,NULL,NULL,NULL,21154,NULL,0,'');
INSERT INTO entry VALUES(5,2,'got','in',20454,3,'near-freezer',638000,'',NULL,'near-freezer',638000,NULL,'127600,127600,127600,127600,127600',0,'frozen',20454,NULL,NULL,NULL,20465,NULL,20694,1281,638000,'');
INSERT INTO entry VALUES(6,2,'got','in',20454,4,'near-freezer',9500,'',NULL,'near-freezer',9500,NULL,'',0,'frozen',20454,NULL,NULL,NULL,20465,NULL,20514,2588,9500,'');
INSERT INTO entry VALUES(7,3,'found','found',20454,5,'crisper',12000,'counted',NULL,'crisper',12000,NULL,'12000',0,'fresh',20454,NULL,NULL,NULL,NULL,20482,NULL,NULL,0,'');
INSERT INTO entry VALUES(8,4,'got','in',20454,6,'pantry',4017950,'',NULL,'pantry',4017950,NULL,'850000,850000,850000,850000,617950',850000,'fresh',20454,NULL,NULL,NULL,NULL,NULL,20819,NULL,0,'');
INSERT INTO entry VALUES(9,5,'got','in',20454,7,'near-freezer',0,'',NULL,'near-freezer',0,'lots','',0,'frozen',20454,NULL,NULL,NULL,NULL,NULL,20544,2740,0,'');
INSERT INTO entry VALUES(10,5,'got','in',20454,8,'near-freezer',0,'',NULL,'near-freezer',0,'some','',0,'frozen',20454,NULL,NULL,NULL,20459,NULL,20514,2084,0,'');
INSERT INTO entry VALUES(11,6,'got','in',20454,9,'pantry',700000,'',NULL,'pantry',700000,NULL,'100000,100000,100000,100000,100000,100000,100000',0,'fresh',20454,NULL,NULL,NULL,NULL,NULL,20494,18,700000,'it''s "special", größer');
INSERT INTO entry VALUES(12,6,'got','in',20454,10,'near-freezer',5000,'',NULL,'near-freezer',5000,NULL,'',0,'frozen',20454,NULL,NULL,NULL,NULL,NULL,NULL,1381,5000,'');
INSERT INTO entry VALUES(13,7,'opened','moved-out',20455,9,'pantry',-100000,'',NULL,'pantry',600000,NULL,'100000,100000,100000,100000,100000,100000',0,'fresh',20454,NULL,NULL,NULL,NULL,NULL,20494,18,700000,'it''s "special", größer');
INSERT INTO entry VALUES(14,7,'opened','moved-in',20455,11,'pantry',100000,'',NULL,'pantry',100000,NULL,'100000',0,'fresh',20454,20455,NULL,NULL,NULL,NULL,20462,18,700000,'it''s "special", größer');
INSERT INTO entry VALUES(15,7,'cooked','used',20455,11,'pantry',-800,'',NULL,'pantry',99200,NULL,'99200',100000,'fresh',20454,20455,NULL,NULL,NULL,NULL,20462,18,700000,'it''s "special", größer');
INSERT INTO entry VALUES(16,7,'opened','none',20455,5,'crisper',0,'',NULL,'crisper',12000,NULL,'12000',0,'fresh',20454,20455,NULL,NULL,NULL,20457,NULL,NULL,0,'');
INSERT INTO entry VALUES(17,7,'cooked','used',20455,5,'crisper',-800,'',NULL,'crisper',11200,NULL,'11200',12000,'fresh',20454,20455,NULL,NULL,NULL,20457,NULL,NULL,0,'');
INSERT INTO entry VALUES(18,7,'cooked','in',20455,12,'fridge',2786,'',NULL,'fridge',2786,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,20458,NULL,808,2786,'');
INSERT INTO entry VALUES(19,8,'got','in',20455,13,'near-freezer',1097000,'',NULL,'near-freezer',1097000,NULL,'',0,'frozen',20455,NULL,NULL,NULL,NULL,NULL,NULL,NULL,0,'');
INSERT INTO entry VALUES(20,8,'got','in',20455,14,'fridge',5000000,'',NULL,'fridge',5000000,NULL,'1000000,1000000,1000000,1000000,1000000',0,'fresh',20455,NULL,NULL,NULL,NULL,20456,NULL,728,5000000,'');
INSERT INTO entry VALUES(21,9,'moved','moved-out',20455,12,'fridge',-2786,'',NULL,'fridge',0,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,20458,NULL,808,2786,'');
INSERT INTO entry VALUES(22,9,'moved','moved-in',20455,12,'near-freezer',2786,'',NULL,'near-freezer',2786,NULL,'',0,'frozen',20455,NULL,NULL,NULL,NULL,NULL,20515,808,2786,'');
INSERT INTO entry VALUES(23,10,'undone','moved-in',20455,12,'near-freezer',-2786,'',22,'fridge',0,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,20458,NULL,808,2786,'');
INSERT INTO entry VALUES(24,10,'undone','moved-out',20455,12,'fridge',2786,'',21,'fridge',2786,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,20458,NULL,808,2786,'');
INSERT INTO entry VALUES(25,11,'eaten','used',20455,12,'fridge',-1500,'',NULL,'fridge',1286,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,20458,NULL,808,2786,'');
INSERT INTO entry VALUES(26,12,'tossed','tossed',20455,14,'fridge',-5000000,'',NULL,'fridge',0,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,20456,NULL,728,5000000,'');
INSERT INTO entry VALUES(27,12,'tossed','tossed',20455,3,'near-freezer',-638000,'',NULL,'near-freezer',0,NULL,'',0,'frozen',20454,NULL,NULL,NULL,20465,NULL,20694,1281,638000,'');
INSERT INTO entry VALUES(28,13,'found','found',20456,9,'pantry',300800,'more than was known',NULL,'pantry',900800,NULL,'100000,100000,100000,100000,100000,100000,300800',0,'fresh',20454,NULL,NULL,NULL,NULL,NULL,20494,18,700000,'it''s "special", größer');
INSERT INTO entry VALUES(29,13,'eaten','used',20456,11,'pantry',-99200,'',NULL,'pantry',0,NULL,'',0,'fresh',20454,20455,NULL,NULL,NULL,NULL,20462,18,700000,'it''s "special", größer');
INSERT INTO entry VALUES(30,13,'eaten','used',20456,9,'pantry',-900800,'',NULL,'pantry',0,NULL,'',0,'fresh',20454,NULL,NULL,NULL,NULL,NULL,20494,18,700000,'it''s "special", größer');
INSERT INTO entry VALUES(31,14,'tossed','tossed',20456,6,'pantry',-4017950,'',NULL,'pantry',0,NULL,'',0,'fresh',20454,NULL,NULL,NULL,NULL,NULL,20819,NULL,0,'');
INSERT INTO entry VALUES(32,15,'lost','lost',20456,5,'crisper',-11200,'counted',NULL,'crisper',0,NULL,'',0,'fresh',20454,20455,NULL,NULL,NULL,20457,NULL,NULL,0,'');
INSERT INTO entry VALUES(33,17,'found','found',20456,15,'pantry',392000,'not known to be there',NULL,'pantry',392000,NULL,'',0,'fresh',20456,NULL,NULL,NULL,NULL,NULL,20821,NULL,0,'');
INSERT INTO entry VALUES(34,17,'opened','none',20456,15,'pantry',0,'',NULL,'pantry',392000,NULL,'',0,'fresh',20456,20456,NULL,NULL,NULL,20461,20821,NULL,0,'');
INSERT INTO entry VALUES(35,18,'found','found',20456,12,'fridge',7214,'more than was known',NULL,'fridge',8500,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,20458,NULL,808,2786,'');
INSERT INTO entry VALUES(36,18,'eaten','used',20456,12,'fridge',-8500,'',NULL,'fridge',0,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,20458,NULL,808,2786,'');
INSERT INTO entry VALUES(37,18,'eaten','used',20456,13,'near-freezer',-1097000,'',NULL,'near-freezer',0,NULL,'',0,'frozen',20455,NULL,NULL,NULL,NULL,NULL,NULL,NULL,0,'');
INSERT INTO entry VALUES(38,19,'got','in',20457,16,'fridge',0,'',NULL,'fridge',0,'lots','',0,'fresh',20457,NULL,NULL,NULL,NULL,NULL,20471,1579,0,'');
INSERT INTO entry VALUES(39,19,'got','in',20457,17,'near-freezer',500,'',NULL,'near-freezer',500,NULL,'',0,'frozen',20457,NULL,NULL,NULL,NULL,NULL,20517,NULL,0,'');
INSERT INTO entry VALUES(40,19,'got','in',20457,18,'crisper',8000,'',NULL,'crisper',8000,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20485,NULL,NULL,0,'');
INSERT INTO entry VALUES(41,20,'undone','in',20457,18,'crisper',-8000,'',40,'crisper',0,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20485,NULL,NULL,0,'');
INSERT INTO entry VALUES(42,20,'undone','in',20457,17,'near-freezer',-500,'',39,'near-freezer',0,NULL,'',0,'frozen',20457,NULL,NULL,NULL,NULL,NULL,20517,NULL,0,'');
INSERT INTO entry VALUES(43,20,'undone','in',20457,16,'fridge',0,'',38,'fridge',0,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,NULL,20471,1579,0,'');
INSERT INTO entry VALUES(44,21,'got','in',20457,19,'far-freezer',8488,'',NULL,'far-freezer',8488,NULL,'',0,'frozen',20457,NULL,NULL,NULL,20462,NULL,20517,NULL,0,'');
INSERT INTO entry VALUES(45,21,'got','in',20457,20,'crisper',96000,'',NULL,'crisper',96000,NULL,'12000,12000,12000,12000,12000,12000,12000,12000',0,'fresh',20457,NULL,NULL,NULL,NULL,20485,NULL,2919,96000,'');
INSERT INTO entry VALUES(46,22,'got','in',20457,21,'crisper',500000,'',NULL,'crisper',500000,NULL,'500000',0,'fresh',20457,NULL,NULL,NULL,NULL,NULL,NULL,2444,500000,'');
INSERT INTO entry VALUES(47,23,'found','found',20457,22,'fridge',450000,'not known to be there',NULL,'fridge',450000,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20459,NULL,NULL,0,'');
INSERT INTO entry VALUES(48,23,'cooked','used',20457,22,'fridge',-450000,'',NULL,'fridge',0,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20459,NULL,NULL,0,'');
INSERT INTO entry VALUES(49,23,'found','found',20457,23,'fridge',100000,'not known to be there',NULL,'fridge',100000,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20458,NULL,NULL,0,'');
INSERT INTO entry VALUES(50,23,'cooked','used',20457,23,'fridge',-100000,'',NULL,'fridge',0,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20458,NULL,NULL,0,'');
INSERT INTO entry VALUES(51,23,'cooked','in',20457,24,'near-freezer',889,'',NULL,'near-freezer',889,NULL,'',0,'frozen',20457,NULL,NULL,NULL,NULL,NULL,20517,252,889,'');
INSERT INTO entry VALUES(52,23,'cooked','in',20457,25,'fridge',29,'',NULL,'fridge',29,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20460,NULL,8,29,'');
INSERT INTO entry VALUES(53,23,'cooked','in',20457,26,'fridge',250,'',NULL,'fridge',250,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20460,NULL,NULL,0,'');
INSERT INTO entry VALUES(54,24,'found','found',20457,27,'fridge',3600000,'not known to be there',NULL,'fridge',3600000,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20459,NULL,NULL,0,'');
INSERT INTO entry VALUES(55,24,'cooked','used',20457,27,'fridge',-3600000,'',NULL,'fridge',0,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20459,NULL,NULL,0,'');
INSERT INTO entry VALUES(56,24,'found','found',20457,28,'fridge',800000,'not known to be there',NULL,'fridge',800000,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20458,NULL,NULL,0,'');
INSERT INTO entry VALUES(57,24,'cooked','used',20457,28,'fridge',-800000,'',NULL,'fridge',0,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20458,NULL,NULL,0,'');
INSERT INTO entry VALUES(58,24,'cooked','in',20457,29,'near-freezer',3853,'',NULL,'near-freezer',3853,NULL,'',0,'frozen',20457,NULL,NULL,NULL,NULL,NULL,20517,1094,3853,'');
INSERT INTO entry VALUES(59,24,'cooked','in',20457,30,'fridge',296,'',NULL,'fridge',296,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20460,NULL,84,296,'');
INSERT INTO entry VALUES(60,24,'cooked','in',20457,31,'fridge',2000,'',NULL,'fridge',2000,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20460,NULL,NULL,0,'');
INSERT INTO entry VALUES(61,25,'opened','moved-out',20458,20,'crisper',-12000,'',NULL,'crisper',84000,NULL,'12000,12000,12000,12000,12000,12000,12000',0,'fresh',20457,NULL,NULL,NULL,NULL,20485,NULL,2919,96000,'');
INSERT INTO entry VALUES(62,25,'opened','moved-in',20458,32,'crisper',12000,'',NULL,'crisper',12000,NULL,'12000',0,'fresh',20457,20458,NULL,NULL,NULL,20460,NULL,2919,96000,'');
INSERT INTO entry VALUES(63,25,'cooked','used',20458,32,'crisper',-2500,'',NULL,'crisper',9500,NULL,'9500',12000,'fresh',20457,20458,NULL,NULL,NULL,20460,NULL,2919,96000,'');
INSERT INTO entry VALUES(64,25,'found','found',20458,33,'fridge',30000,'not known to be there',NULL,'fridge',30000,NULL,'',0,'fresh',20458,NULL,NULL,NULL,NULL,20466,NULL,NULL,0,'');
INSERT INTO entry VALUES(65,25,'cooked','used',20458,33,'fridge',-30000,'',NULL,'fridge',0,NULL,'',0,'fresh',20458,NULL,NULL,NULL,NULL,20466,NULL,NULL,0,'');
INSERT INTO entry VALUES(66,25,'found','found',20458,34,'fridge',250000,'not known to be there',NULL,'fridge',250000,NULL,'',0,'fresh',20458,NULL,NULL,NULL,NULL,20459,NULL,NULL,0,'');
INSERT INTO entry VALUES(67,25,'cooked','used',20458,34,'fridge',-250000,'',NULL,'fridge',0,NULL,'',0,'fresh',20458,NULL,NULL,NULL,NULL,20459,NULL,NULL,0,'');
INSERT INTO entry VALUES(68,26,'found','found',20458,35,'crisper',1000,'not known to be there',NULL,'crisper',1000,NULL,'',0,'fresh',20458,NULL,NULL,NULL,NULL,NULL,20479,NULL,0,'');
INSERT INTO entry VALUES(69,26,'cooked','used',20458,35,'crisper',-1000,'',NULL,'crisper',0,NULL,'',0,'fresh',20458,NULL,NULL,NULL,NULL,NULL,20479,NULL,0,'');
INSERT INTO entry VALUES(70,26,'found','found',20458,36,'pantry',600000,'not known to be there',NULL,'pantry',600000,NULL,'',0,'fresh',20458,NULL,NULL,NULL,NULL,NULL,21158,NULL,0,'');
INSERT INTO entry VALUES(71,26,'cooked','used',20458,36,'pantry',-600000,'',NULL,'pantry',0,NULL,'',0,'fresh',20458,NULL,NULL,NULL,NULL,NULL,21158,NULL,0,'');
INSERT INTO entry VALUES(72,27,'eaten','used',20458,10,'near-freezer',-5000,'',NULL,'near-freezer',0,NULL,'',0,'frozen',20454,NULL,NULL,NULL,NULL,NULL,NULL,1381,5000,'');
INSERT INTO entry VALUES(73,28,'got','in',20458,37,'fridge',1054575,'',NULL,'fridge',1054575,NULL,'',0,'fresh',20458,NULL,NULL,NULL,20458,20458,NULL,249,1054575,'');
INSERT INTO entry VALUES(74,29,'got','in',20458,38,'near-freezer',1285628,'',NULL,'near-freezer',1285628,NULL,'',0,'frozen',20458,NULL,NULL,NULL,NULL,NULL,20728,1545,1285628,'');
INSERT INTO entry VALUES(75,29,'got','in',20458,39,'near-freezer',10000000,'',NULL,'near-freezer',10000000,NULL,'2000000,2000000,2000000,2000000,2000000',0,'frozen',20458,NULL,NULL,NULL,20462,NULL,NULL,2060,10000000,'');
INSERT INTO entry VALUES(76,30,'undone','in',20458,39,'near-freezer',-10000000,'',75,'near-freezer',0,NULL,'',0,'frozen',20458,NULL,NULL,NULL,20462,NULL,NULL,2060,10000000,'');
INSERT INTO entry VALUES(77,30,'undone','in',20458,38,'near-freezer',-1285628,'',74,'near-freezer',0,NULL,'',0,'frozen',20458,NULL,NULL,NULL,NULL,NULL,20728,1545,1285628,'');
CREATE TABLE plan_edit (
    number INTEGER PRIMARY KEY,
    command INTEGER NOT NULL REFERENCES command (number),
    adds INTEGER NOT NULL CHECK (adds IN (0, 1)),
    day INTEGER NOT NULL CHECK (day BETWEEN -719162 AND 2932896),
    meal TEXT NOT NULL CHECK (meal IN ('lunch', 'dinner')),
    dish TEXT NOT NULL CHECK (dish <> ''),
    ready_meal INTEGER NOT NULL CHECK (ready_meal IN (0, 1)),
    serves INTEGER CHECK (serves > 0),
    extra INTEGER NOT NULL CHECK (extra >= 0)
) STRICT;
CREATE TABLE plan (
    day INTEGER NOT NULL,
    meal TEXT NOT NULL,
    dish TEXT NOT NULL,
    ready_meal INTEGER NOT NULL,
    serves INTEGER,
    extra INTEGER NOT NULL,
    PRIMARY KEY (day, meal, dish)
) STRICT, WITHOUT ROWID;
CREATE TABLE history_edit (
    number INTEGER PRIMARY KEY,
    command INTEGER NOT NULL REFERENCES command (number),
    adds INTEGER NOT NULL CHECK (adds IN (0, 1)),
    day INTEGER NOT NULL CHECK (day BETWEEN -719162 AND 2932896),
    meal TEXT NOT NULL CHECK (meal IN ('lunch', 'dinner')),
    dish TEXT NOT NULL CHECK (dish <> '')
) STRICT;
INSERT INTO history_edit VALUES(1,1,1,20454,'dinner','cabbage-rice');
INSERT INTO history_edit VALUES(2,7,1,20455,'lunch','meat-loaf');
INSERT INTO history_edit VALUES(3,16,1,20354,'dinner','omelette');
INSERT INTO history_edit VALUES(4,23,1,20457,'lunch','roast-chicken');
INSERT INTO history_edit VALUES(5,25,1,20458,'dinner','omelette');
INSERT INTO history_edit VALUES(6,26,1,20458,'dinner','cabbage-rice');
CREATE TABLE history (
    day INTEGER NOT NULL,
    meal TEXT NOT NULL,
    dish TEXT NOT NULL,
    PRIMARY KEY (day, meal, dish)
) STRICT, WITHOUT ROWID;
INSERT INTO history VALUES(20354,'dinner','omelette');
INSERT INTO history VALUES(20454,'dinner','cabbage-rice');
INSERT INTO history VALUES(20455,'lunch','meat-loaf');
INSERT INTO history VALUES(20457,'lunch','roast-chicken');
INSERT INTO history VALUES(20458,'dinner','cabbage-rice');
INSERT INTO history VALUES(20458,'dinner','omelette');
CREATE TABLE fact_edit (
    number INTEGER PRIMARY KEY,
    command INTEGER NOT NULL REFERENCES command (number),
    adds INTEGER NOT NULL CHECK (adds IN (0, 1)),
    kind TEXT NOT NULL CHECK (kind IN ('out', 'pack', 'price')),
    ingredient TEXT NOT NULL CHECK (ingredient <> ''),
    amount INTEGER NOT NULL CHECK (amount >= 0),
    minor INTEGER NOT NULL
) STRICT;
INSERT INTO fact_edit VALUES(1,2,1,'price','peas',638000,1281);
INSERT INTO fact_edit VALUES(2,2,1,'price','cold-roast-chicken',9500,2588);
INSERT INTO fact_edit VALUES(3,4,1,'pack','oil',850000,0);
INSERT INTO fact_edit VALUES(4,6,1,'pack','onion',100000,0);
INSERT INTO fact_edit VALUES(5,6,1,'price','onion',5000,1381);
INSERT INTO fact_edit VALUES(6,8,0,'price','peas',638000,1281);
INSERT INTO fact_edit VALUES(7,8,1,'price','peas',5000000,728);
INSERT INTO fact_edit VALUES(8,19,1,'pack','cabbage',950000,0);
INSERT INTO fact_edit VALUES(9,20,0,'pack','cabbage',950000,0);
INSERT INTO fact_edit VALUES(10,21,1,'price','eggs',96000,2919);
INSERT INTO fact_edit VALUES(11,22,1,'price','pasta-sauce',500000,2444);
INSERT INTO fact_edit VALUES(12,28,0,'price','peas',5000000,728);
INSERT INTO fact_edit VALUES(13,28,1,'price','peas',1054575,249);
INSERT INTO fact_edit VALUES(14,29,1,'price','whole-chicken',1285628,1545);
INSERT INTO fact_edit VALUES(15,29,1,'price','rice',10000000,2060);
INSERT INTO fact_edit VALUES(16,30,0,'price','rice',10000000,2060);
INSERT INTO fact_edit VALUES(17,30,0,'price','whole-chicken',1285628,1545);
CREATE TABLE fact (
    kind TEXT NOT NULL,
    ingredient TEXT NOT NULL,
    amount INTEGER NOT NULL,
    minor INTEGER NOT NULL,
    PRIMARY KEY (kind, ingredient)
) STRICT, WITHOUT ROWID;
INSERT INTO fact VALUES('pack','oil',850000,0);
INSERT INTO fact VALUES('pack','onion',100000,0);
INSERT INTO fact VALUES('price','cold-roast-chicken',9500,2588);
INSERT INTO fact VALUES('price','eggs',96000,2919);
INSERT INTO fact VALUES('price','onion',5000,1381);
INSERT INTO fact VALUES('price','pasta-sauce',500000,2444);
INSERT INTO fact VALUES('price','peas',1054575,249);
CREATE INDEX lot_there ON lot (number) WHERE amount > 0 OR rough IS NOT NULL;
CREATE INDEX entry_lot ON entry (lot, number);
CREATE INDEX entry_command ON entry (command);
CREATE INDEX plan_edit_command ON plan_edit (command);
CREATE INDEX history_edit_command ON history_edit (command);
CREATE INDEX fact_edit_command ON fact_edit (command);
CREATE TRIGGER command_stays BEFORE UPDATE ON command BEGIN SELECT RAISE(ABORT, 'a command is never changed'); END;
CREATE TRIGGER command_kept BEFORE DELETE ON command BEGIN SELECT RAISE(ABORT, 'a command is never deleted'); END;
CREATE TRIGGER command_next BEFORE INSERT ON command
WHEN NEW.number IS NOT (SELECT ifnull(max(number), 0) + 1 FROM command)
BEGIN SELECT RAISE(ABORT, 'commands are numbered in order'); END;
CREATE TRIGGER command_undone BEFORE INSERT ON command
WHEN (SELECT undoes FROM command WHERE number = NEW.undoes) IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'an undo is not undone'); END;
CREATE TRIGGER entry_stays BEFORE UPDATE ON entry BEGIN SELECT RAISE(ABORT, 'an entry is never changed'); END;
CREATE TRIGGER entry_kept BEFORE DELETE ON entry BEGIN SELECT RAISE(ABORT, 'an entry is never deleted'); END;
CREATE TRIGGER entry_next BEFORE INSERT ON entry
WHEN NEW.number IS NOT (SELECT ifnull(max(number), 0) + 1 FROM entry)
BEGIN SELECT RAISE(ABORT, 'entries are numbered in order'); END;
CREATE TRIGGER entry_above_nothing BEFORE INSERT ON entry
WHEN (SELECT amount FROM lot WHERE number = NEW.lot) + NEW.delta < 0
BEGIN SELECT RAISE(ABORT, 'a lot never goes below nothing'); END;
CREATE TRIGGER entry_follows BEFORE INSERT ON entry
WHEN NEW.amount IS NOT (SELECT amount FROM lot WHERE number = NEW.lot) + NEW.delta
BEGIN SELECT RAISE(ABORT, 'a lot is the sum of its entries'); END;
CREATE TRIGGER entry_lands AFTER INSERT ON entry BEGIN
    UPDATE lot SET last_entry = NEW.number, place = NEW.place, amount = NEW.amount, rough = NEW.rough, packs = NEW.packs,
        part_of = NEW.part_of, state = NEW.state, since = NEW.since, opened_on = NEW.opened_on, thaw = NEW.thaw,
        thawed_on = NEW.thawed_on, printed_use_by = NEW.printed_use_by, use_by = NEW.use_by, best_by = NEW.best_by,
        paid = NEW.paid, paid_for = NEW.paid_for, note = NEW.note
    WHERE number = NEW.lot;
END;
CREATE TRIGGER lot_next BEFORE INSERT ON lot
WHEN NEW.number IS NOT (SELECT ifnull(max(number), 0) + 1 FROM lot) OR NEW.amount <> 0 OR NEW.last_entry IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'a lot begins with nothing, and lots are numbered in order'); END;
CREATE TRIGGER lot_stays BEFORE UPDATE ON lot
WHEN NEW.number <> OLD.number OR NEW.ingredient <> OLD.ingredient OR NEW.dish IS NOT OLD.dish OR NEW.arrived <> OLD.arrived
    OR NEW.dimension <> OLD.dimension OR NEW.last_entry IS OLD.last_entry
BEGIN SELECT RAISE(ABORT, 'a lot changes by entries only'); END;
CREATE TRIGGER lot_kept BEFORE DELETE ON lot BEGIN SELECT RAISE(ABORT, 'a lot is never deleted'); END;
CREATE TRIGGER plan_edit_stays BEFORE UPDATE ON plan_edit BEGIN SELECT RAISE(ABORT, 'the past is never changed'); END;
CREATE TRIGGER plan_edit_kept BEFORE DELETE ON plan_edit BEGIN SELECT RAISE(ABORT, 'the past is never deleted'); END;
CREATE TRIGGER plan_edit_next BEFORE INSERT ON plan_edit
WHEN NEW.number IS NOT (SELECT ifnull(max(number), 0) + 1 FROM plan_edit)
BEGIN SELECT RAISE(ABORT, 'edits are numbered in order'); END;
CREATE TRIGGER plan_edit_follows BEFORE INSERT ON plan_edit
WHEN NEW.adds = 0 AND NOT EXISTS (SELECT 1 FROM plan WHERE day = NEW.day AND meal = NEW.meal AND dish = NEW.dish AND
    ready_meal = NEW.ready_meal AND serves IS NEW.serves AND extra = NEW.extra)
BEGIN SELECT RAISE(ABORT, 'what leaves the plan is in it'); END;
CREATE TRIGGER plan_edit_adds AFTER INSERT ON plan_edit WHEN NEW.adds = 1 BEGIN
    INSERT INTO plan VALUES (NEW.day, NEW.meal, NEW.dish, NEW.ready_meal, NEW.serves, NEW.extra);
END;
CREATE TRIGGER plan_edit_takes AFTER INSERT ON plan_edit WHEN NEW.adds = 0 BEGIN
    DELETE FROM plan WHERE day = NEW.day AND meal = NEW.meal AND dish = NEW.dish;
END;
CREATE TRIGGER history_edit_stays BEFORE UPDATE ON history_edit BEGIN SELECT RAISE(ABORT, 'the past is never changed'); END;
CREATE TRIGGER history_edit_kept BEFORE DELETE ON history_edit BEGIN SELECT RAISE(ABORT, 'the past is never deleted'); END;
CREATE TRIGGER history_edit_next BEFORE INSERT ON history_edit
WHEN NEW.number IS NOT (SELECT ifnull(max(number), 0) + 1 FROM history_edit)
BEGIN SELECT RAISE(ABORT, 'edits are numbered in order'); END;
CREATE TRIGGER history_edit_follows BEFORE INSERT ON history_edit
WHEN NEW.adds = 0 AND NOT EXISTS (SELECT 1 FROM history WHERE day = NEW.day AND meal = NEW.meal AND dish = NEW.dish)
BEGIN SELECT RAISE(ABORT, 'what leaves the history is in it'); END;
CREATE TRIGGER history_edit_adds AFTER INSERT ON history_edit WHEN NEW.adds = 1 BEGIN
    INSERT INTO history VALUES (NEW.day, NEW.meal, NEW.dish);
END;
CREATE TRIGGER history_edit_takes AFTER INSERT ON history_edit WHEN NEW.adds = 0 BEGIN
    DELETE FROM history WHERE day = NEW.day AND meal = NEW.meal AND dish = NEW.dish;
END;
CREATE TRIGGER fact_edit_stays BEFORE UPDATE ON fact_edit BEGIN SELECT RAISE(ABORT, 'the past is never changed'); END;
CREATE TRIGGER fact_edit_kept BEFORE DELETE ON fact_edit BEGIN SELECT RAISE(ABORT, 'the past is never deleted'); END;
CREATE TRIGGER fact_edit_next BEFORE INSERT ON fact_edit
WHEN NEW.number IS NOT (SELECT ifnull(max(number), 0) + 1 FROM fact_edit)
BEGIN SELECT RAISE(ABORT, 'edits are numbered in order'); END;
CREATE TRIGGER fact_edit_follows BEFORE INSERT ON fact_edit
WHEN NEW.adds = 0 AND NOT EXISTS (SELECT 1 FROM fact WHERE kind = NEW.kind AND ingredient = NEW.ingredient AND
    amount = NEW.amount AND minor = NEW.minor)
BEGIN SELECT RAISE(ABORT, 'what no longer holds did hold'); END;
CREATE TRIGGER fact_edit_adds AFTER INSERT ON fact_edit WHEN NEW.adds = 1 BEGIN
    INSERT INTO fact VALUES (NEW.kind, NEW.ingredient, NEW.amount, NEW.minor);
END;
CREATE TRIGGER fact_edit_takes AFTER INSERT ON fact_edit WHEN NEW.adds = 0 BEGIN
    DELETE FROM fact WHERE kind = NEW.kind AND ingredient = NEW.ingredient;
END;
PRAGMA application_id = 1935764834;
PRAGMA user_version = 1;
COMMIT;
