-- A kitchen as layout version 3 wrote it: sixty commands of the chain in tests/support/chain.hpp. Made with
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
INSERT INTO command VALUES(1,20454,'remember','remembered 1 past meal',NULL,8561730161857519866);
INSERT INTO command VALUES(2,20454,'swap','dinner on Mon 5 Jan: cabbage rice with 310 g beef mince, rice for eggs',NULL,-2161947393420812082);
INSERT INTO command VALUES(3,20454,'count','counted near-freezer: oil nothing -> 1.55 L and rice nothing -> 2.2 kg',NULL,-6629275304248670130);
INSERT INTO command VALUES(4,20454,'got','got 2.31 kg beef mince into crisper, use by 2026-01-03 and 1 1/2 packs (230 mL) oil into near-freezer',NULL,2233465694116412771);
INSERT INTO command VALUES(5,20454,'tossed','tossed 2.7 kg beef mince: smelt off',NULL,-6282731510778237723);
INSERT INTO command VALUES(6,20454,'moved','moved to crisper: 1.5 L oil, to be cooked from 2026-01-02',NULL,-7793875583510092578);
INSERT INTO command VALUES(7,20455,'cooked','cooked roast chicken, 1 serve: 1/2 serve cold roast chicken into near-freezer, best by 2026-03-03, 3 serves cold roast chicken into fridge, use by 2026-01-05 and 1/2 serve chicken carcass (roast chicken) into fridge, use by 2026-01-05',NULL,8985947494739512548);
INSERT INTO command VALUES(8,20455,'remember','remembered 1 past meal',NULL,-8802756734626643775);
INSERT INTO command VALUES(9,20455,'count','counted crisper: onion nothing -> some, nothing cold roast chicken and beef mince nothing -> 1 pack (1.2 kg)',NULL,-1307765102389759436);
INSERT INTO command VALUES(10,20455,'undo','undid: counted crisper: onion nothing -> some, nothing cold roast chicken and beef mince nothing -> 1 pack (1.2 kg)',9,-4702191117086892817);
INSERT INTO command VALUES(11,20455,'count','counted fridge: cold meat loaf nothing -> 9 1/2 serves',NULL,-9171590987501522268);
INSERT INTO command VALUES(12,20455,'opened','opened 1 serve cold roast chicken, use by 2026-01-05 and 2.1 L pasta sauce, use by 2026-01-07',NULL,4847413759384352419);
INSERT INTO command VALUES(13,20456,'moved','moved to crisper: 3 serves cold roast chicken, use by 2026-01-05',NULL,8588677023663797774);
INSERT INTO command VALUES(14,20456,'moved','moved to near-freezer: 1 serve cold roast chicken, to freeze, best by 2026-03-04',NULL,7997847089184537951);
INSERT INTO command VALUES(15,20456,'opened','opened 2 kg flour, best by 2026-07-02, 51 mL oil and 4 1/2 packs (690 mL) oil',NULL,-5494057193949215225);
INSERT INTO command VALUES(16,20456,'got','got some eggs into near-freezer',NULL,7549937817525336769);
INSERT INTO command VALUES(17,20456,'ate','ate 392 mL pasta sauce',NULL,2852320034280047375);
INSERT INTO command VALUES(18,20456,'count','counted fridge: flour nothing -> 1.96 kg, milk nothing -> 5 1/2 packs (11.4 L), cold roast chicken nothing -> some, chicken carcass (roast chicken) 1/2 serve -> nothing and cold meat loaf 9 1/2 serves -> nothing',NULL,-7860620393565425215);
INSERT INTO command VALUES(19,20457,'cooked','cooked roast chicken, 8 serves: 5 serves cold roast chicken into fridge, use by 2026-01-07 and 2 serves chicken carcass (roast chicken) into fridge, use by 2026-01-07',NULL,5113222048530232747);
INSERT INTO command VALUES(20,20457,'undo','undid: cooked roast chicken, 8 serves: 5 serves cold roast chicken into fridge, use by 2026-01-07 and 2 serves chicken carcass (roast chicken) into fridge, use by 2026-01-07',19,8255296422477801276);
INSERT INTO command VALUES(21,20457,'count','counted fridge: flour 1.96 kg -> nothing, milk 5 1/2 packs (11.4 L) -> nothing and cold roast chicken some -> nothing',NULL,-6008332418256304695);
INSERT INTO command VALUES(22,20457,'moved','moved to fridge: 1.7 L pasta sauce, use by 2026-01-07',NULL,495336445120696115);
INSERT INTO command VALUES(23,20457,'ate','ate 2 kg flour',NULL,1450834865701018411);
INSERT INTO command VALUES(24,20457,'got','got 528 g whole chicken into near-freezer, best by 2026-10-01',NULL,-1969416983388624604);
INSERT INTO command VALUES(25,20458,'tossed','tossed 2.32 kg rice',NULL,6352333030849950274);
INSERT INTO command VALUES(26,20458,'cooked','cooked cabbage rice, 8 serves',NULL,8250008260683775685);
INSERT INTO command VALUES(27,20458,'remember','remembered 1 past meal',NULL,3022839720357410751);
INSERT INTO command VALUES(28,20458,'got','got 1.05 kg peas into fridge, use by 2026-01-05',NULL,3946938411869326038);
INSERT INTO command VALUES(29,20458,'swap','dinner on Mon 5 Jan: roast chicken with no onion',NULL,4885272703949710954);
INSERT INTO command VALUES(30,20458,'undo','undid: dinner on Mon 5 Jan: roast chicken with no onion',29,2298712577021293894);
INSERT INTO command VALUES(31,20459,'moved','moved to near-freezer: 4.5 L pasta sauce, to freeze, best by 2026-04-06 and 7 onion, to freeze',NULL,3686631930617524780);
INSERT INTO command VALUES(32,20459,'got','got lots flour into fridge',NULL,3980093632521117610);
INSERT INTO command VALUES(33,20459,'moved','moved to far-freezer: 7 onion',NULL,-3757768911066401198);
INSERT INTO command VALUES(34,20459,'cooked','cooked cabbage rice, 8 serves',NULL,-5993490047189106828);
INSERT INTO command VALUES(35,20459,'remember','remembered 1 past meal',NULL,-8419080645421436672);
INSERT INTO command VALUES(36,20459,'got','got 2 packs (1.74 L) milk into crisper, use by 2026-01-08',NULL,-4892175855385392301);
INSERT INTO command VALUES(37,20460,'swap','dinner on Sat 17 Jan: roast chicken',NULL,7860936132740609074);
INSERT INTO command VALUES(38,20460,'opened','opened 2.87 kg whole chicken, best by 2026-10-01',NULL,2679917529291779384);
INSERT INTO command VALUES(39,20460,'count','counted far-freezer: milk nothing -> 1.65 L, nothing cold meat loaf and parsley nothing -> 490 g',NULL,-2867000530665607320);
INSERT INTO command VALUES(40,20460,'undo','undid: counted far-freezer: milk nothing -> 1.65 L, nothing cold meat loaf and parsley nothing -> 490 g',39,-2156749606788791127);
INSERT INTO command VALUES(41,20460,'swap','lunch on Tue 13 Jan: meat loaf',NULL,4129462225770984162);
INSERT INTO command VALUES(42,20460,'out','flour is out',NULL,1837402472435202791);
INSERT INTO command VALUES(43,20461,'cooked','cooked meat loaf, 1 serve: 1/2 serve cold meat loaf into fridge, use by 2026-01-11',NULL,-1941570560708669160);
INSERT INTO command VALUES(44,20461,'ate','ate 2.1 L oil and 1 1/2 serves cold roast chicken',NULL,7139879718460259163);
INSERT INTO command VALUES(45,20461,'out','oil is out',NULL,-2596087982323228004);
INSERT INTO command VALUES(46,20461,'opened','opened 1 pack (868 mL) milk, use by 2026-01-08',NULL,-7346295718602959752);
INSERT INTO command VALUES(47,20461,'count','counted pantry: eggs nothing -> lots',NULL,8939091099988780528);
INSERT INTO command VALUES(48,20461,'count','counted near-freezer: cold meat loaf nothing -> 2 packs (16 1/2 serves)',NULL,-1176515500995320199);
INSERT INTO command VALUES(49,20462,'got','got 4 packs (8 kg) whole chicken into crisper, use by 2026-01-11 and 3 packs (1.1 L) pasta sauce into near-freezer, best by 2026-04-09',NULL,-3558149029679205597);
INSERT INTO command VALUES(50,20462,'undo','undid: got 4 packs (8 kg) whole chicken into crisper, use by 2026-01-11 and 3 packs (1.1 L) pasta sauce into near-freezer, best by 2026-04-09',49,-7491945620647204681);
INSERT INTO command VALUES(51,20462,'got','got 7 cabbage into near-freezer',NULL,-7832137114326599438);
INSERT INTO command VALUES(52,20462,'got','got lots onion into near-freezer and 2.35 kg flour into fridge',NULL,8155884429858685512);
INSERT INTO command VALUES(53,20462,'ate','ate 7 onion',NULL,7647184250353490228);
INSERT INTO command VALUES(54,20462,'remember','remembered 1 past meal',NULL,8287017606377357358);
INSERT INTO command VALUES(55,20463,'got','got 3 packs (2.55 kg) whole chicken into crisper, use by 2026-01-12 and 2 1/2 packs (33) eggs into crisper, use by 2026-02-07',NULL,-2992002742049621463);
INSERT INTO command VALUES(56,20463,'got','got 5 cabbage into crisper, best by 2026-01-31 and 1 1/2 onion into far-freezer',NULL,7285425778619687206);
INSERT INTO command VALUES(57,20463,'ate','ate 110 g beef mince',NULL,-3618462165059293381);
INSERT INTO command VALUES(58,20463,'cooked','cooked meat loaf, 8 serves: 7 serves cold meat loaf into fridge, use by 2026-01-13',NULL,863594628816130576);
INSERT INTO command VALUES(59,20463,'swap','lunch on Wed 14 Jan: meat loaf with 336 eggs, peas for onion',NULL,3528069648205006313);
INSERT INTO command VALUES(60,20463,'undo','undid: lunch on Wed 14 Jan: meat loaf with 336 eggs, peas for onion',59,-5263310829799494182);
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
, also TEXT NOT NULL DEFAULT '') STRICT;
INSERT INTO lot VALUES(1,'oil',NULL,20454,'volume',97,'near-freezer',0,NULL,'',0,'frozen',20454,20456,NULL,NULL,NULL,NULL,NULL,NULL,0,'','');
INSERT INTO lot VALUES(2,'rice',NULL,20454,'mass',62,'near-freezer',0,NULL,'',0,'frozen',20454,NULL,NULL,NULL,NULL,NULL,NULL,NULL,0,'','');
INSERT INTO lot VALUES(3,'beef-mince',NULL,20454,'mass',6,'crisper',0,NULL,'',0,'fresh',20454,NULL,NULL,NULL,NULL,20456,NULL,NULL,0,'','');
INSERT INTO lot VALUES(4,'oil',NULL,20454,'volume',98,'near-freezer',0,NULL,'',0,'frozen',20454,20456,NULL,NULL,20460,NULL,NULL,NULL,0,'it''s "special", größer','');
INSERT INTO lot VALUES(5,'oil',NULL,20454,'volume',96,'crisper',0,NULL,'',0,'thawing',20454,NULL,'fridge',20455,NULL,NULL,NULL,NULL,0,'','');
INSERT INTO lot VALUES(6,'whole-chicken',NULL,20455,'mass',10,'fridge',0,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,20457,NULL,NULL,0,'','');
INSERT INTO lot VALUES(7,'peas',NULL,20455,'mass',12,'fridge',0,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,20456,NULL,NULL,0,'','');
INSERT INTO lot VALUES(8,'cold-roast-chicken','roast-chicken',20455,'pieces',99,'near-freezer',0,NULL,'',0,'frozen',20455,NULL,NULL,NULL,NULL,NULL,20515,190,630,'','');
INSERT INTO lot VALUES(9,'cold-roast-chicken','roast-chicken',20455,'pieces',27,'crisper',3000,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,20458,NULL,916,3034,'','');
INSERT INTO lot VALUES(10,'chicken-carcass','roast-chicken',20455,'pieces',40,'fridge',0,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,20458,NULL,NULL,0,'','');
INSERT INTO lot VALUES(11,'onion',NULL,20455,'pieces',19,'crisper',0,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,NULL,20515,NULL,0,'','');
INSERT INTO lot VALUES(12,'beef-mince',NULL,20455,'mass',18,'crisper',0,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,20457,NULL,NULL,0,'','');
INSERT INTO lot VALUES(13,'cold-meat-loaf',NULL,20455,'pieces',41,'fridge',0,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,20458,NULL,NULL,0,'','');
INSERT INTO lot VALUES(14,'cold-roast-chicken','roast-chicken',20455,'pieces',100,'near-freezer',130,NULL,'',0,'frozen',20456,20455,NULL,NULL,NULL,NULL,20516,916,3034,'','');
INSERT INTO lot VALUES(15,'pasta-sauce',NULL,20455,'volume',71,'near-freezer',4499811,NULL,'',0,'frozen',20459,20455,NULL,NULL,NULL,NULL,20549,NULL,0,'','');
INSERT INTO lot VALUES(16,'flour',NULL,20456,'mass',59,'pantry',0,NULL,'',0,'fresh',20456,20456,NULL,NULL,NULL,NULL,20636,NULL,0,'','');
INSERT INTO lot VALUES(17,'eggs',NULL,20456,'pieces',35,'near-freezer',0,'some','',0,'frozen',20456,NULL,NULL,NULL,NULL,NULL,NULL,125,0,'','');
INSERT INTO lot VALUES(18,'flour',NULL,20456,'mass',54,'fridge',0,NULL,'',0,'fresh',20456,NULL,NULL,NULL,NULL,NULL,NULL,NULL,0,'','');
INSERT INTO lot VALUES(19,'milk',NULL,20456,'volume',55,'fridge',0,NULL,'',0,'fresh',20456,NULL,NULL,NULL,NULL,20464,NULL,NULL,0,'','');
INSERT INTO lot VALUES(20,'cold-roast-chicken',NULL,20456,'pieces',56,'fridge',0,NULL,'',0,'fresh',20456,NULL,NULL,NULL,NULL,20459,NULL,NULL,0,'','');
INSERT INTO lot VALUES(21,'whole-chicken',NULL,20457,'mass',53,'fridge',0,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20459,NULL,NULL,0,'','');
INSERT INTO lot VALUES(22,'peas',NULL,20457,'mass',51,'fridge',0,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20458,NULL,NULL,0,'','');
INSERT INTO lot VALUES(23,'cold-roast-chicken','roast-chicken',20457,'pieces',49,'fridge',0,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20460,NULL,1514,5012,'','');
INSERT INTO lot VALUES(24,'chicken-carcass','roast-chicken',20457,'pieces',48,'fridge',0,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20460,NULL,NULL,0,'','');
INSERT INTO lot VALUES(25,'whole-chicken',NULL,20457,'mass',85,'near-freezer',2874000,NULL,'',0,'frozen',20457,20460,NULL,NULL,NULL,NULL,20727,NULL,0,'','');
INSERT INTO lot VALUES(26,'cabbage',NULL,20458,'pieces',64,'crisper',0,NULL,'',0,'fresh',20458,NULL,NULL,NULL,NULL,NULL,20479,NULL,0,'','');
INSERT INTO lot VALUES(27,'rice',NULL,20458,'mass',66,'pantry',0,NULL,'',0,'fresh',20458,NULL,NULL,NULL,NULL,NULL,21158,NULL,0,'','');
INSERT INTO lot VALUES(28,'peas',NULL,20458,'mass',68,'fridge',1054575,NULL,'',0,'fresh',20458,NULL,NULL,NULL,20458,20458,NULL,249,1054575,'','');
INSERT INTO lot VALUES(29,'onion',NULL,20459,'pieces',113,'far-freezer',0,NULL,'',0,'frozen',20459,NULL,NULL,NULL,NULL,NULL,NULL,NULL,0,'','');
INSERT INTO lot VALUES(30,'flour',NULL,20459,'mass',75,'fridge',0,'lots','',0,'fresh',20459,NULL,NULL,NULL,NULL,NULL,NULL,NULL,0,'','');
INSERT INTO lot VALUES(31,'cabbage',NULL,20459,'pieces',79,'crisper',0,NULL,'',0,'fresh',20459,NULL,NULL,NULL,NULL,NULL,20480,NULL,0,'','');
INSERT INTO lot VALUES(32,'rice',NULL,20459,'mass',81,'pantry',0,NULL,'',0,'fresh',20459,NULL,NULL,NULL,NULL,NULL,21159,NULL,0,'','');
INSERT INTO lot VALUES(33,'milk',NULL,20459,'volume',101,'crisper',868000,NULL,'868000',0,'fresh',20459,NULL,NULL,NULL,20461,20461,NULL,90,1736000,'','');
INSERT INTO lot VALUES(34,'milk',NULL,20460,'volume',89,'far-freezer',0,NULL,'',0,'frozen',20460,NULL,NULL,NULL,NULL,NULL,20490,NULL,0,'','');
INSERT INTO lot VALUES(35,'parsley',NULL,20460,'mass',88,'far-freezer',0,NULL,'',0,'frozen',20460,NULL,NULL,NULL,NULL,NULL,20640,NULL,0,'','');
INSERT INTO lot VALUES(36,'beef-mince',NULL,20461,'mass',91,'fridge',0,NULL,'',0,'fresh',20461,NULL,NULL,NULL,NULL,20463,NULL,NULL,0,'','');
INSERT INTO lot VALUES(37,'onion',NULL,20459,'pieces',122,'far-freezer',0,NULL,'',0,'frozen',20459,20461,NULL,NULL,NULL,NULL,NULL,NULL,0,'','');
INSERT INTO lot VALUES(38,'cold-meat-loaf','meat-loaf',20461,'pieces',95,'fridge',200,NULL,'',0,'fresh',20461,NULL,NULL,NULL,NULL,20464,NULL,47,200,'','');
INSERT INTO lot VALUES(39,'milk',NULL,20459,'volume',102,'crisper',868000,NULL,'868000',0,'fresh',20459,20461,NULL,NULL,20461,20461,NULL,90,1736000,'','');
INSERT INTO lot VALUES(40,'eggs',NULL,20461,'pieces',103,'pantry',0,'lots','',0,'fresh',20461,NULL,NULL,NULL,NULL,20461,NULL,NULL,0,'','');
INSERT INTO lot VALUES(41,'cold-meat-loaf',NULL,20461,'pieces',104,'near-freezer',16500,NULL,'8250,8250',0,'frozen',20461,NULL,NULL,NULL,NULL,NULL,20521,NULL,0,'','');
INSERT INTO lot VALUES(42,'whole-chicken',NULL,20462,'mass',108,'crisper',0,NULL,'',0,'fresh',20462,NULL,NULL,NULL,20464,20464,NULL,928,8000000,'it''s "special", größer','');
INSERT INTO lot VALUES(43,'pasta-sauce',NULL,20462,'volume',107,'near-freezer',0,NULL,'',0,'frozen',20462,NULL,NULL,NULL,20470,NULL,20552,NULL,0,'','');
INSERT INTO lot VALUES(44,'cabbage',NULL,20462,'pieces',109,'near-freezer',6500,NULL,'',0,'frozen',20462,NULL,NULL,NULL,20465,NULL,NULL,800,6500,'it''s "special", größer','');
INSERT INTO lot VALUES(45,'onion',NULL,20462,'pieces',110,'near-freezer',0,'lots','',0,'frozen',20462,NULL,NULL,NULL,NULL,NULL,NULL,1012,0,'','');
INSERT INTO lot VALUES(46,'flour',NULL,20462,'mass',129,'fridge',2291874,NULL,'',0,'fresh',20462,NULL,NULL,NULL,NULL,NULL,NULL,NULL,0,'','');
INSERT INTO lot VALUES(47,'whole-chicken',NULL,20463,'mass',114,'crisper',2550000,NULL,'850000,850000,850000',0,'fresh',20463,NULL,NULL,NULL,NULL,20465,NULL,NULL,0,'it''s "special", größer','');
INSERT INTO lot VALUES(48,'eggs',NULL,20463,'pieces',126,'crisper',24000,NULL,'12000,12000',0,'fresh',20463,NULL,NULL,NULL,NULL,20491,NULL,NULL,0,'','');
INSERT INTO lot VALUES(49,'cabbage',NULL,20463,'pieces',116,'crisper',5056,NULL,'',0,'fresh',20463,NULL,NULL,NULL,NULL,NULL,20484,NULL,0,'','');
INSERT INTO lot VALUES(50,'onion',NULL,20463,'pieces',123,'far-freezer',609,NULL,'',0,'frozen',20463,NULL,NULL,NULL,NULL,NULL,NULL,2156,1609,'','');
INSERT INTO lot VALUES(51,'beef-mince',NULL,20463,'mass',119,'fridge',0,NULL,'',0,'fresh',20463,NULL,NULL,NULL,NULL,20465,NULL,NULL,0,'','');
INSERT INTO lot VALUES(52,'beef-mince',NULL,20463,'mass',121,'fridge',0,NULL,'',0,'fresh',20463,NULL,NULL,NULL,NULL,20465,NULL,NULL,0,'','');
INSERT INTO lot VALUES(53,'onion',NULL,20463,'pieces',125,'far-freezer',250,NULL,'',0,'frozen',20463,20463,NULL,NULL,NULL,NULL,NULL,2156,1609,'','');
INSERT INTO lot VALUES(54,'eggs',NULL,20463,'pieces',128,'crisper',6952,NULL,'6952',12000,'fresh',20463,20463,NULL,NULL,NULL,20465,NULL,NULL,0,'','');
INSERT INTO lot VALUES(55,'cold-meat-loaf','meat-loaf',20463,'pieces',130,'fridge',6796,NULL,'',0,'fresh',20463,NULL,NULL,NULL,NULL,20466,NULL,3418,6796,'','');
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
INSERT INTO entry VALUES(1,3,'found','found',20454,1,'near-freezer',1551000,'counted',NULL,'near-freezer',1551000,NULL,'',0,'frozen',20454,NULL,NULL,NULL,NULL,NULL,NULL,NULL,0,'');
INSERT INTO entry VALUES(2,3,'found','found',20454,2,'near-freezer',2223609,'counted',NULL,'near-freezer',2223609,NULL,'',0,'frozen',20454,NULL,NULL,NULL,NULL,NULL,NULL,NULL,0,'');
INSERT INTO entry VALUES(3,4,'got','in',20454,3,'crisper',2309000,'',NULL,'crisper',2309000,NULL,'',0,'fresh',20454,NULL,NULL,NULL,NULL,20456,NULL,NULL,0,'');
INSERT INTO entry VALUES(4,4,'got','in',20454,4,'near-freezer',233100,'',NULL,'near-freezer',233100,NULL,'150000,83100',150000,'frozen',20454,NULL,NULL,NULL,20460,NULL,NULL,NULL,0,'it''s "special", größer');
INSERT INTO entry VALUES(5,5,'found','found',20454,3,'crisper',388000,'more than was known',NULL,'crisper',2697000,NULL,'',0,'fresh',20454,NULL,NULL,NULL,NULL,20456,NULL,NULL,0,'');
INSERT INTO entry VALUES(6,5,'tossed','tossed',20454,3,'crisper',-2697000,'smelt off',NULL,'crisper',0,NULL,'',0,'fresh',20454,NULL,NULL,NULL,NULL,20456,NULL,NULL,0,'');
INSERT INTO entry VALUES(7,6,'thawing','moved-out',20454,1,'near-freezer',-1500000,'',NULL,'near-freezer',51000,NULL,'',0,'frozen',20454,NULL,NULL,NULL,NULL,NULL,NULL,NULL,0,'');
INSERT INTO entry VALUES(8,6,'thawing','moved-in',20454,5,'crisper',1500000,'',NULL,'crisper',1500000,NULL,'',0,'thawing',20454,NULL,'fridge',20455,NULL,NULL,NULL,NULL,0,'');
INSERT INTO entry VALUES(9,7,'found','found',20455,6,'fridge',2000000,'not known to be there',NULL,'fridge',2000000,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,20457,NULL,NULL,0,'');
INSERT INTO entry VALUES(10,7,'cooked','used',20455,6,'fridge',-2000000,'',NULL,'fridge',0,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,20457,NULL,NULL,0,'');
INSERT INTO entry VALUES(11,7,'found','found',20455,7,'fridge',100000,'not known to be there',NULL,'fridge',100000,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,20456,NULL,NULL,0,'');
INSERT INTO entry VALUES(12,7,'cooked','used',20455,7,'fridge',-100000,'',NULL,'fridge',0,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,20456,NULL,NULL,0,'');
INSERT INTO entry VALUES(13,7,'cooked','in',20455,8,'near-freezer',630,'',NULL,'near-freezer',630,NULL,'',0,'frozen',20455,NULL,NULL,NULL,NULL,NULL,20515,190,630,'');
INSERT INTO entry VALUES(14,7,'cooked','in',20455,9,'fridge',3034,'',NULL,'fridge',3034,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,20458,NULL,916,3034,'');
INSERT INTO entry VALUES(15,7,'cooked','in',20455,10,'fridge',250,'',NULL,'fridge',250,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,20458,NULL,NULL,0,'');
INSERT INTO entry VALUES(16,9,'found','found',20455,11,'crisper',0,'counted as ''some''',NULL,'crisper',0,'some','',0,'fresh',20455,NULL,NULL,NULL,NULL,NULL,20515,NULL,0,'');
INSERT INTO entry VALUES(17,9,'found','found',20455,12,'crisper',1203000,'counted',NULL,'crisper',1203000,NULL,'1203000',0,'fresh',20455,NULL,NULL,NULL,NULL,20457,NULL,NULL,0,'');
INSERT INTO entry VALUES(18,10,'undone','found',20455,12,'crisper',-1203000,'',17,'crisper',0,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,20457,NULL,NULL,0,'');
INSERT INTO entry VALUES(19,10,'undone','found',20455,11,'crisper',0,'',16,'crisper',0,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,NULL,20515,NULL,0,'');
INSERT INTO entry VALUES(20,11,'found','found',20455,13,'fridge',9500,'counted',NULL,'fridge',9500,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,20458,NULL,NULL,0,'');
INSERT INTO entry VALUES(21,12,'opened','moved-out',20455,9,'fridge',-1000,'',NULL,'fridge',2034,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,20458,NULL,916,3034,'');
INSERT INTO entry VALUES(22,12,'opened','moved-in',20455,14,'fridge',1000,'',NULL,'fridge',1000,NULL,'',0,'fresh',20455,20455,NULL,NULL,NULL,20458,NULL,916,3034,'');
INSERT INTO entry VALUES(23,12,'found','found',20455,15,'pantry',2090311,'not known to be there',NULL,'pantry',2090311,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,NULL,20820,NULL,0,'');
INSERT INTO entry VALUES(24,12,'opened','none',20455,15,'pantry',0,'',NULL,'pantry',2090311,NULL,'',0,'fresh',20455,20455,NULL,NULL,NULL,20460,20820,NULL,0,'');
INSERT INTO entry VALUES(25,13,'found','found',20456,9,'fridge',966,'more than was known',NULL,'fridge',3000,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,20458,NULL,916,3034,'');
INSERT INTO entry VALUES(26,13,'moved','moved-out',20456,9,'fridge',-3000,'',NULL,'fridge',0,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,20458,NULL,916,3034,'');
INSERT INTO entry VALUES(27,13,'moved','moved-in',20456,9,'crisper',3000,'',NULL,'crisper',3000,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,20458,NULL,916,3034,'');
INSERT INTO entry VALUES(28,14,'moved','moved-out',20456,14,'fridge',-1000,'',NULL,'fridge',0,NULL,'',0,'fresh',20455,20455,NULL,NULL,NULL,20458,NULL,916,3034,'');
INSERT INTO entry VALUES(29,14,'moved','moved-in',20456,14,'near-freezer',1000,'',NULL,'near-freezer',1000,NULL,'',0,'frozen',20456,20455,NULL,NULL,NULL,NULL,20516,916,3034,'');
INSERT INTO entry VALUES(30,15,'found','found',20456,16,'pantry',2000000,'not known to be there',NULL,'pantry',2000000,NULL,'',0,'fresh',20456,NULL,NULL,NULL,NULL,NULL,20636,NULL,0,'');
INSERT INTO entry VALUES(31,15,'opened','none',20456,16,'pantry',0,'',NULL,'pantry',2000000,NULL,'',0,'fresh',20456,20456,NULL,NULL,NULL,NULL,20636,NULL,0,'');
INSERT INTO entry VALUES(32,15,'found','found',20456,4,'near-freezer',455550,'more than was known',NULL,'near-freezer',688650,NULL,'150000,150000,150000,150000,88650',150000,'frozen',20454,NULL,NULL,NULL,20460,NULL,NULL,NULL,0,'it''s "special", größer');
INSERT INTO entry VALUES(33,15,'opened','none',20456,1,'near-freezer',0,'',NULL,'near-freezer',51000,NULL,'',0,'frozen',20454,20456,NULL,NULL,NULL,NULL,NULL,NULL,0,'');
INSERT INTO entry VALUES(34,15,'opened','none',20456,4,'near-freezer',0,'',NULL,'near-freezer',688650,NULL,'150000,150000,150000,150000,88650',150000,'frozen',20454,20456,NULL,NULL,20460,NULL,NULL,NULL,0,'it''s "special", größer');
INSERT INTO entry VALUES(35,16,'got','in',20456,17,'near-freezer',0,'',NULL,'near-freezer',0,'some','',0,'frozen',20456,NULL,NULL,NULL,NULL,NULL,NULL,125,0,'');
INSERT INTO entry VALUES(36,17,'eaten','used',20456,15,'pantry',-392000,'',NULL,'pantry',1698311,NULL,'',0,'fresh',20455,20455,NULL,NULL,NULL,20460,20820,NULL,0,'');
INSERT INTO entry VALUES(37,18,'found','found',20456,18,'fridge',1956000,'counted',NULL,'fridge',1956000,NULL,'',0,'fresh',20456,NULL,NULL,NULL,NULL,NULL,NULL,NULL,0,'');
INSERT INTO entry VALUES(38,18,'found','found',20456,19,'fridge',11390000,'counted',NULL,'fridge',11390000,NULL,'2000000,2000000,2000000,2000000,2000000,1390000',2000000,'fresh',20456,NULL,NULL,NULL,NULL,20464,NULL,NULL,0,'');
INSERT INTO entry VALUES(39,18,'found','found',20456,20,'fridge',0,'counted as ''some''',NULL,'fridge',0,'some','',0,'fresh',20456,NULL,NULL,NULL,NULL,20459,NULL,NULL,0,'');
INSERT INTO entry VALUES(40,18,'lost','lost',20456,10,'fridge',-250,'counted',NULL,'fridge',0,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,20458,NULL,NULL,0,'');
INSERT INTO entry VALUES(41,18,'lost','lost',20456,13,'fridge',-9500,'counted',NULL,'fridge',0,NULL,'',0,'fresh',20455,NULL,NULL,NULL,NULL,20458,NULL,NULL,0,'');
INSERT INTO entry VALUES(42,19,'found','found',20457,21,'fridge',4000000,'not known to be there',NULL,'fridge',4000000,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20459,NULL,NULL,0,'');
INSERT INTO entry VALUES(43,19,'cooked','used',20457,21,'fridge',-4000000,'',NULL,'fridge',0,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20459,NULL,NULL,0,'');
INSERT INTO entry VALUES(44,19,'found','found',20457,22,'fridge',800000,'not known to be there',NULL,'fridge',800000,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20458,NULL,NULL,0,'');
INSERT INTO entry VALUES(45,19,'cooked','used',20457,22,'fridge',-800000,'',NULL,'fridge',0,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20458,NULL,NULL,0,'');
INSERT INTO entry VALUES(46,19,'cooked','in',20457,23,'fridge',5012,'',NULL,'fridge',5012,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20460,NULL,1514,5012,'');
INSERT INTO entry VALUES(47,19,'cooked','in',20457,24,'fridge',2000,'',NULL,'fridge',2000,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20460,NULL,NULL,0,'');
INSERT INTO entry VALUES(48,20,'undone','in',20457,24,'fridge',-2000,'',47,'fridge',0,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20460,NULL,NULL,0,'');
INSERT INTO entry VALUES(49,20,'undone','in',20457,23,'fridge',-5012,'',46,'fridge',0,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20460,NULL,1514,5012,'');
INSERT INTO entry VALUES(50,20,'undone','used',20457,22,'fridge',800000,'',45,'fridge',800000,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20458,NULL,NULL,0,'');
INSERT INTO entry VALUES(51,20,'undone','found',20457,22,'fridge',-800000,'',44,'fridge',0,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20458,NULL,NULL,0,'');
INSERT INTO entry VALUES(52,20,'undone','used',20457,21,'fridge',4000000,'',43,'fridge',4000000,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20459,NULL,NULL,0,'');
INSERT INTO entry VALUES(53,20,'undone','found',20457,21,'fridge',-4000000,'',42,'fridge',0,NULL,'',0,'fresh',20457,NULL,NULL,NULL,NULL,20459,NULL,NULL,0,'');
INSERT INTO entry VALUES(54,21,'lost','lost',20457,18,'fridge',-1956000,'counted',NULL,'fridge',0,NULL,'',0,'fresh',20456,NULL,NULL,NULL,NULL,NULL,NULL,NULL,0,'');
INSERT INTO entry VALUES(55,21,'lost','lost',20457,19,'fridge',-11390000,'counted',NULL,'fridge',0,NULL,'',0,'fresh',20456,NULL,NULL,NULL,NULL,20464,NULL,NULL,0,'');
INSERT INTO entry VALUES(56,21,'lost','lost',20457,20,'fridge',0,'counted',NULL,'fridge',0,NULL,'',0,'fresh',20456,NULL,NULL,NULL,NULL,20459,NULL,NULL,0,'');
INSERT INTO entry VALUES(57,22,'moved','moved-out',20457,15,'pantry',-1698311,'',NULL,'pantry',0,NULL,'',0,'fresh',20455,20455,NULL,NULL,NULL,20460,20820,NULL,0,'');
INSERT INTO entry VALUES(58,22,'moved','moved-in',20457,15,'fridge',1698311,'',NULL,'fridge',1698311,NULL,'',0,'fresh',20455,20455,NULL,NULL,NULL,20460,NULL,NULL,0,'');
INSERT INTO entry VALUES(59,23,'eaten','used',20457,16,'pantry',-2000000,'',NULL,'pantry',0,NULL,'',0,'fresh',20456,20456,NULL,NULL,NULL,NULL,20636,NULL,0,'');
INSERT INTO entry VALUES(60,24,'got','in',20457,25,'near-freezer',528000,'',NULL,'near-freezer',528000,NULL,'',0,'frozen',20457,NULL,NULL,NULL,NULL,NULL,20727,NULL,0,'');
INSERT INTO entry VALUES(61,25,'found','found',20458,2,'near-freezer',96391,'more than was known',NULL,'near-freezer',2320000,NULL,'',0,'frozen',20454,NULL,NULL,NULL,NULL,NULL,NULL,NULL,0,'');
INSERT INTO entry VALUES(62,25,'tossed','tossed',20458,2,'near-freezer',-2320000,'',NULL,'near-freezer',0,NULL,'',0,'frozen',20454,NULL,NULL,NULL,NULL,NULL,NULL,NULL,0,'');
INSERT INTO entry VALUES(63,26,'found','found',20458,26,'crisper',1000,'not known to be there',NULL,'crisper',1000,NULL,'',0,'fresh',20458,NULL,NULL,NULL,NULL,NULL,20479,NULL,0,'');
INSERT INTO entry VALUES(64,26,'cooked','used',20458,26,'crisper',-1000,'',NULL,'crisper',0,NULL,'',0,'fresh',20458,NULL,NULL,NULL,NULL,NULL,20479,NULL,0,'');
INSERT INTO entry VALUES(65,26,'found','found',20458,27,'pantry',600000,'not known to be there',NULL,'pantry',600000,NULL,'',0,'fresh',20458,NULL,NULL,NULL,NULL,NULL,21158,NULL,0,'');
INSERT INTO entry VALUES(66,26,'cooked','used',20458,27,'pantry',-600000,'',NULL,'pantry',0,NULL,'',0,'fresh',20458,NULL,NULL,NULL,NULL,NULL,21158,NULL,0,'');
INSERT INTO entry VALUES(67,26,'cooked','used',20458,5,'crisper',-60000,'',NULL,'crisper',1440000,NULL,'',0,'thawing',20454,NULL,'fridge',20455,NULL,NULL,NULL,NULL,0,'');
INSERT INTO entry VALUES(68,28,'got','in',20458,28,'fridge',1054575,'',NULL,'fridge',1054575,NULL,'',0,'fresh',20458,NULL,NULL,NULL,20458,20458,NULL,249,1054575,'');
INSERT INTO entry VALUES(69,31,'found','found',20459,15,'fridge',2801500,'more than was known',NULL,'fridge',4499811,NULL,'',0,'fresh',20455,20455,NULL,NULL,NULL,20460,NULL,NULL,0,'');
INSERT INTO entry VALUES(70,31,'moved','moved-out',20459,15,'fridge',-4499811,'',NULL,'fridge',0,NULL,'',0,'fresh',20455,20455,NULL,NULL,NULL,20460,NULL,NULL,0,'');
INSERT INTO entry VALUES(71,31,'moved','moved-in',20459,15,'near-freezer',4499811,'',NULL,'near-freezer',4499811,NULL,'',0,'frozen',20459,20455,NULL,NULL,NULL,NULL,20549,NULL,0,'');
INSERT INTO entry VALUES(72,31,'found','found',20459,29,'pantry',7000,'not known to be there',NULL,'pantry',7000,NULL,'',0,'fresh',20459,NULL,NULL,NULL,NULL,NULL,20499,NULL,0,'');
INSERT INTO entry VALUES(73,31,'moved','moved-out',20459,29,'pantry',-7000,'',NULL,'pantry',0,NULL,'',0,'fresh',20459,NULL,NULL,NULL,NULL,NULL,20499,NULL,0,'');
INSERT INTO entry VALUES(74,31,'moved','moved-in',20459,29,'near-freezer',7000,'',NULL,'near-freezer',7000,NULL,'',0,'frozen',20459,NULL,NULL,NULL,NULL,NULL,NULL,NULL,0,'');
INSERT INTO entry VALUES(75,32,'got','in',20459,30,'fridge',0,'',NULL,'fridge',0,'lots','',0,'fresh',20459,NULL,NULL,NULL,NULL,NULL,NULL,NULL,0,'');
INSERT INTO entry VALUES(76,33,'moved','moved-out',20459,29,'near-freezer',-7000,'',NULL,'near-freezer',0,NULL,'',0,'frozen',20459,NULL,NULL,NULL,NULL,NULL,NULL,NULL,0,'');
INSERT INTO entry VALUES(77,33,'moved','moved-in',20459,29,'far-freezer',7000,'',NULL,'far-freezer',7000,NULL,'',0,'frozen',20459,NULL,NULL,NULL,NULL,NULL,NULL,NULL,0,'');
INSERT INTO entry VALUES(78,34,'found','found',20459,31,'crisper',1000,'not known to be there',NULL,'crisper',1000,NULL,'',0,'fresh',20459,NULL,NULL,NULL,NULL,NULL,20480,NULL,0,'');
INSERT INTO entry VALUES(79,34,'cooked','used',20459,31,'crisper',-1000,'',NULL,'crisper',0,NULL,'',0,'fresh',20459,NULL,NULL,NULL,NULL,NULL,20480,NULL,0,'');
INSERT INTO entry VALUES(80,34,'found','found',20459,32,'pantry',600000,'not known to be there',NULL,'pantry',600000,NULL,'',0,'fresh',20459,NULL,NULL,NULL,NULL,NULL,21159,NULL,0,'');
INSERT INTO entry VALUES(81,34,'cooked','used',20459,32,'pantry',-600000,'',NULL,'pantry',0,NULL,'',0,'fresh',20459,NULL,NULL,NULL,NULL,NULL,21159,NULL,0,'');
INSERT INTO entry VALUES(82,34,'cooked','used',20459,5,'crisper',-60000,'',NULL,'crisper',1380000,NULL,'',0,'thawing',20454,NULL,'fridge',20455,NULL,NULL,NULL,NULL,0,'');
INSERT INTO entry VALUES(83,36,'got','in',20459,33,'crisper',1736000,'',NULL,'crisper',1736000,NULL,'868000,868000',0,'fresh',20459,NULL,NULL,NULL,20461,20461,NULL,90,1736000,'');
INSERT INTO entry VALUES(84,38,'found','found',20460,25,'near-freezer',2346000,'more than was known',NULL,'near-freezer',2874000,NULL,'',0,'frozen',20457,NULL,NULL,NULL,NULL,NULL,20727,NULL,0,'');
INSERT INTO entry VALUES(85,38,'opened','none',20460,25,'near-freezer',0,'',NULL,'near-freezer',2874000,NULL,'',0,'frozen',20457,20460,NULL,NULL,NULL,NULL,20727,NULL,0,'');
INSERT INTO entry VALUES(86,39,'found','found',20460,34,'far-freezer',1650446,'counted',NULL,'far-freezer',1650446,NULL,'',0,'frozen',20460,NULL,NULL,NULL,NULL,NULL,20490,NULL,0,'');
INSERT INTO entry VALUES(87,39,'found','found',20460,35,'far-freezer',487975,'counted',NULL,'far-freezer',487975,NULL,'',0,'frozen',20460,NULL,NULL,NULL,NULL,NULL,20640,NULL,0,'');
INSERT INTO entry VALUES(88,40,'undone','found',20460,35,'far-freezer',-487975,'',87,'far-freezer',0,NULL,'',0,'frozen',20460,NULL,NULL,NULL,NULL,NULL,20640,NULL,0,'');
INSERT INTO entry VALUES(89,40,'undone','found',20460,34,'far-freezer',-1650446,'',86,'far-freezer',0,NULL,'',0,'frozen',20460,NULL,NULL,NULL,NULL,NULL,20490,NULL,0,'');
INSERT INTO entry VALUES(90,43,'found','found',20461,36,'fridge',150000,'not known to be there',NULL,'fridge',150000,NULL,'',0,'fresh',20461,NULL,NULL,NULL,NULL,20463,NULL,NULL,0,'');
INSERT INTO entry VALUES(91,43,'cooked','used',20461,36,'fridge',-150000,'',NULL,'fridge',0,NULL,'',0,'fresh',20461,NULL,NULL,NULL,NULL,20463,NULL,NULL,0,'');
INSERT INTO entry VALUES(92,43,'opened','moved-out',20461,29,'far-freezer',-1000,'',NULL,'far-freezer',6000,NULL,'',0,'frozen',20459,NULL,NULL,NULL,NULL,NULL,NULL,NULL,0,'');
INSERT INTO entry VALUES(93,43,'opened','moved-in',20461,37,'far-freezer',1000,'',NULL,'far-freezer',1000,NULL,'',0,'frozen',20459,20461,NULL,NULL,NULL,NULL,NULL,NULL,0,'');
INSERT INTO entry VALUES(94,43,'cooked','used',20461,37,'far-freezer',-250,'',NULL,'far-freezer',750,NULL,'',0,'frozen',20459,20461,NULL,NULL,NULL,NULL,NULL,NULL,0,'');
INSERT INTO entry VALUES(95,43,'cooked','in',20461,38,'fridge',200,'',NULL,'fridge',200,NULL,'',0,'fresh',20461,NULL,NULL,NULL,NULL,20464,NULL,47,200,'');
INSERT INTO entry VALUES(96,44,'eaten','used',20461,5,'crisper',-1380000,'',NULL,'crisper',0,NULL,'',0,'thawing',20454,NULL,'fridge',20455,NULL,NULL,NULL,NULL,0,'');
INSERT INTO entry VALUES(97,44,'eaten','used',20461,1,'near-freezer',-51000,'',NULL,'near-freezer',0,NULL,'',0,'frozen',20454,20456,NULL,NULL,NULL,NULL,NULL,NULL,0,'');
INSERT INTO entry VALUES(98,44,'eaten','used',20461,4,'near-freezer',-688650,'',NULL,'near-freezer',0,NULL,'',0,'frozen',20454,20456,NULL,NULL,20460,NULL,NULL,NULL,0,'it''s "special", größer');
INSERT INTO entry VALUES(99,44,'eaten','used',20461,8,'near-freezer',-630,'',NULL,'near-freezer',0,NULL,'',0,'frozen',20455,NULL,NULL,NULL,NULL,NULL,20515,190,630,'');
INSERT INTO entry VALUES(100,44,'eaten','used',20461,14,'near-freezer',-870,'',NULL,'near-freezer',130,NULL,'',0,'frozen',20456,20455,NULL,NULL,NULL,NULL,20516,916,3034,'');
INSERT INTO entry VALUES(101,46,'opened','moved-out',20461,33,'crisper',-868000,'',NULL,'crisper',868000,NULL,'868000',0,'fresh',20459,NULL,NULL,NULL,20461,20461,NULL,90,1736000,'');
INSERT INTO entry VALUES(102,46,'opened','moved-in',20461,39,'crisper',868000,'',NULL,'crisper',868000,NULL,'868000',0,'fresh',20459,20461,NULL,NULL,20461,20461,NULL,90,1736000,'');
INSERT INTO entry VALUES(103,47,'found','found',20461,40,'pantry',0,'counted as ''lots''',NULL,'pantry',0,'lots','',0,'fresh',20461,NULL,NULL,NULL,NULL,20461,NULL,NULL,0,'');
INSERT INTO entry VALUES(104,48,'found','found',20461,41,'near-freezer',16500,'counted',NULL,'near-freezer',16500,NULL,'8250,8250',0,'frozen',20461,NULL,NULL,NULL,NULL,NULL,20521,NULL,0,'');
INSERT INTO entry VALUES(105,49,'got','in',20462,42,'crisper',8000000,'',NULL,'crisper',8000000,NULL,'2000000,2000000,2000000,2000000',0,'fresh',20462,NULL,NULL,NULL,20464,20464,NULL,928,8000000,'it''s "special", größer');
INSERT INTO entry VALUES(106,49,'got','in',20462,43,'near-freezer',1095707,'',NULL,'near-freezer',1095707,NULL,'500000,500000,95707',0,'frozen',20462,NULL,NULL,NULL,20470,NULL,20552,NULL,0,'');
INSERT INTO entry VALUES(107,50,'undone','in',20462,43,'near-freezer',-1095707,'',106,'near-freezer',0,NULL,'',0,'frozen',20462,NULL,NULL,NULL,20470,NULL,20552,NULL,0,'');
INSERT INTO entry VALUES(108,50,'undone','in',20462,42,'crisper',-8000000,'',105,'crisper',0,NULL,'',0,'fresh',20462,NULL,NULL,NULL,20464,20464,NULL,928,8000000,'it''s "special", größer');
INSERT INTO entry VALUES(109,51,'got','in',20462,44,'near-freezer',6500,'',NULL,'near-freezer',6500,NULL,'',0,'frozen',20462,NULL,NULL,NULL,20465,NULL,NULL,800,6500,'it''s "special", größer');
INSERT INTO entry VALUES(110,52,'got','in',20462,45,'near-freezer',0,'',NULL,'near-freezer',0,'lots','',0,'frozen',20462,NULL,NULL,NULL,NULL,NULL,NULL,1012,0,'');
INSERT INTO entry VALUES(111,52,'got','in',20462,46,'fridge',2339874,'',NULL,'fridge',2339874,NULL,'',0,'fresh',20462,NULL,NULL,NULL,NULL,NULL,NULL,NULL,0,'');
INSERT INTO entry VALUES(112,53,'found','found',20462,29,'far-freezer',1000,'more than was known',NULL,'far-freezer',7000,NULL,'',0,'frozen',20459,NULL,NULL,NULL,NULL,NULL,NULL,NULL,0,'');
INSERT INTO entry VALUES(113,53,'eaten','used',20462,29,'far-freezer',-7000,'',NULL,'far-freezer',0,NULL,'',0,'frozen',20459,NULL,NULL,NULL,NULL,NULL,NULL,NULL,0,'');
INSERT INTO entry VALUES(114,55,'got','in',20463,47,'crisper',2550000,'',NULL,'crisper',2550000,NULL,'850000,850000,850000',0,'fresh',20463,NULL,NULL,NULL,NULL,20465,NULL,NULL,0,'it''s "special", größer');
INSERT INTO entry VALUES(115,55,'got','in',20463,48,'crisper',32952,'',NULL,'crisper',32952,NULL,'12000,12000,8952',12000,'fresh',20463,NULL,NULL,NULL,NULL,20491,NULL,NULL,0,'');
INSERT INTO entry VALUES(116,56,'got','in',20463,49,'crisper',5056,'',NULL,'crisper',5056,NULL,'',0,'fresh',20463,NULL,NULL,NULL,NULL,NULL,20484,NULL,0,'');
INSERT INTO entry VALUES(117,56,'got','in',20463,50,'far-freezer',1609,'',NULL,'far-freezer',1609,NULL,'',0,'frozen',20463,NULL,NULL,NULL,NULL,NULL,NULL,2156,1609,'');
INSERT INTO entry VALUES(118,57,'found','found',20463,51,'fridge',110814,'not known to be there',NULL,'fridge',110814,NULL,'',0,'fresh',20463,NULL,NULL,NULL,NULL,20465,NULL,NULL,0,'');
INSERT INTO entry VALUES(119,57,'eaten','used',20463,51,'fridge',-110814,'',NULL,'fridge',0,NULL,'',0,'fresh',20463,NULL,NULL,NULL,NULL,20465,NULL,NULL,0,'');
INSERT INTO entry VALUES(120,58,'found','found',20463,52,'fridge',1200000,'not known to be there',NULL,'fridge',1200000,NULL,'',0,'fresh',20463,NULL,NULL,NULL,NULL,20465,NULL,NULL,0,'');
INSERT INTO entry VALUES(121,58,'cooked','used',20463,52,'fridge',-1200000,'',NULL,'fridge',0,NULL,'',0,'fresh',20463,NULL,NULL,NULL,NULL,20465,NULL,NULL,0,'');
INSERT INTO entry VALUES(122,58,'cooked','used',20463,37,'far-freezer',-750,'',NULL,'far-freezer',0,NULL,'',0,'frozen',20459,20461,NULL,NULL,NULL,NULL,NULL,NULL,0,'');
INSERT INTO entry VALUES(123,58,'opened','moved-out',20463,50,'far-freezer',-1000,'',NULL,'far-freezer',609,NULL,'',0,'frozen',20463,NULL,NULL,NULL,NULL,NULL,NULL,2156,1609,'');
INSERT INTO entry VALUES(124,58,'opened','moved-in',20463,53,'far-freezer',1000,'',NULL,'far-freezer',1000,NULL,'',0,'frozen',20463,20463,NULL,NULL,NULL,NULL,NULL,2156,1609,'');
INSERT INTO entry VALUES(125,58,'cooked','used',20463,53,'far-freezer',-750,'',NULL,'far-freezer',250,NULL,'',0,'frozen',20463,20463,NULL,NULL,NULL,NULL,NULL,2156,1609,'');
INSERT INTO entry VALUES(126,58,'opened','moved-out',20463,48,'crisper',-8952,'',NULL,'crisper',24000,NULL,'12000,12000',0,'fresh',20463,NULL,NULL,NULL,NULL,20491,NULL,NULL,0,'');
INSERT INTO entry VALUES(127,58,'opened','moved-in',20463,54,'crisper',8952,'',NULL,'crisper',8952,NULL,'8952',12000,'fresh',20463,20463,NULL,NULL,NULL,20465,NULL,NULL,0,'');
INSERT INTO entry VALUES(128,58,'cooked','used',20463,54,'crisper',-2000,'',NULL,'crisper',6952,NULL,'6952',12000,'fresh',20463,20463,NULL,NULL,NULL,20465,NULL,NULL,0,'');
INSERT INTO entry VALUES(129,58,'cooked','used',20463,46,'fridge',-48000,'',NULL,'fridge',2291874,NULL,'',0,'fresh',20462,NULL,NULL,NULL,NULL,NULL,NULL,NULL,0,'');
INSERT INTO entry VALUES(130,58,'cooked','in',20463,55,'fridge',6796,'',NULL,'fridge',6796,NULL,'',0,'fresh',20463,NULL,NULL,NULL,NULL,20466,NULL,3418,6796,'');
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
, swaps TEXT NOT NULL DEFAULT '') STRICT;
INSERT INTO plan_edit VALUES(1,2,1,20458,'dinner','cabbage-rice',0,3,2,'beef-mince/1500=beef-mince:309647,eggs/500=rice:180667');
INSERT INTO plan_edit VALUES(2,29,1,20458,'dinner','roast-chicken',0,NULL,2,'onion/1500=');
INSERT INTO plan_edit VALUES(3,30,0,20458,'dinner','roast-chicken',0,NULL,2,'onion/1500=');
INSERT INTO plan_edit VALUES(4,37,1,20470,'dinner','roast-chicken',0,NULL,1,'');
INSERT INTO plan_edit VALUES(5,41,1,20466,'lunch','meat-loaf',0,7,0,'');
INSERT INTO plan_edit VALUES(6,59,1,20467,'lunch','meat-loaf',0,NULL,0,'eggs/3500=eggs:336079,onion/3000=peas:173014');
INSERT INTO plan_edit VALUES(7,60,0,20467,'lunch','meat-loaf',0,NULL,0,'eggs/3500=eggs:336079,onion/3000=peas:173014');
CREATE TABLE plan (
    day INTEGER NOT NULL,
    meal TEXT NOT NULL,
    dish TEXT NOT NULL,
    ready_meal INTEGER NOT NULL,
    serves INTEGER,
    extra INTEGER NOT NULL, swaps TEXT NOT NULL DEFAULT '',
    PRIMARY KEY (day, meal, dish)
) STRICT, WITHOUT ROWID;
INSERT INTO "plan" VALUES(20458,'dinner','cabbage-rice',0,3,2,'beef-mince/1500=beef-mince:309647,eggs/500=rice:180667');
INSERT INTO "plan" VALUES(20466,'lunch','meat-loaf',0,7,0,'');
INSERT INTO "plan" VALUES(20470,'dinner','roast-chicken',0,NULL,1,'');
CREATE TABLE history_edit (
    number INTEGER PRIMARY KEY,
    command INTEGER NOT NULL REFERENCES command (number),
    adds INTEGER NOT NULL CHECK (adds IN (0, 1)),
    day INTEGER NOT NULL CHECK (day BETWEEN -719162 AND 2932896),
    meal TEXT NOT NULL CHECK (meal IN ('lunch', 'dinner')),
    dish TEXT NOT NULL CHECK (dish <> '')
) STRICT;
INSERT INTO history_edit VALUES(1,1,1,20292,'lunch','cabbage-rice');
INSERT INTO history_edit VALUES(2,7,1,20455,'dinner','roast-chicken');
INSERT INTO history_edit VALUES(3,8,1,20259,'lunch','roast-chicken');
INSERT INTO history_edit VALUES(4,19,1,20457,'dinner','roast-chicken');
INSERT INTO history_edit VALUES(5,20,0,20457,'dinner','roast-chicken');
INSERT INTO history_edit VALUES(6,26,1,20458,'dinner','cabbage-rice');
INSERT INTO history_edit VALUES(7,27,1,20318,'lunch','cabbage-rice');
INSERT INTO history_edit VALUES(8,34,1,20459,'dinner','cabbage-rice');
INSERT INTO history_edit VALUES(9,35,1,20435,'lunch','omelette');
INSERT INTO history_edit VALUES(10,43,1,20461,'dinner','meat-loaf');
INSERT INTO history_edit VALUES(11,54,1,20255,'dinner','meat-loaf');
INSERT INTO history_edit VALUES(12,58,1,20463,'dinner','meat-loaf');
CREATE TABLE history (
    day INTEGER NOT NULL,
    meal TEXT NOT NULL,
    dish TEXT NOT NULL,
    PRIMARY KEY (day, meal, dish)
) STRICT, WITHOUT ROWID;
INSERT INTO history VALUES(20255,'dinner','meat-loaf');
INSERT INTO history VALUES(20259,'lunch','roast-chicken');
INSERT INTO history VALUES(20292,'lunch','cabbage-rice');
INSERT INTO history VALUES(20318,'lunch','cabbage-rice');
INSERT INTO history VALUES(20435,'lunch','omelette');
INSERT INTO history VALUES(20455,'dinner','roast-chicken');
INSERT INTO history VALUES(20458,'dinner','cabbage-rice');
INSERT INTO history VALUES(20459,'dinner','cabbage-rice');
INSERT INTO history VALUES(20461,'dinner','meat-loaf');
INSERT INTO history VALUES(20463,'dinner','meat-loaf');
CREATE TABLE fact_edit (
    number INTEGER PRIMARY KEY,
    command INTEGER NOT NULL REFERENCES command (number),
    adds INTEGER NOT NULL CHECK (adds IN (0, 1)),
    kind TEXT NOT NULL CHECK (kind IN ('out', 'pack', 'price')),
    ingredient TEXT NOT NULL CHECK (ingredient <> ''),
    amount INTEGER NOT NULL CHECK (amount >= 0),
    minor INTEGER NOT NULL
) STRICT;
INSERT INTO fact_edit VALUES(1,4,1,'pack','oil',150000,0);
INSERT INTO fact_edit VALUES(2,28,1,'price','peas',1054575,249);
INSERT INTO fact_edit VALUES(3,36,1,'price','milk',1736000,90);
INSERT INTO fact_edit VALUES(4,42,1,'out','flour',0,0);
INSERT INTO fact_edit VALUES(5,45,1,'out','oil',0,0);
INSERT INTO fact_edit VALUES(6,49,1,'price','whole-chicken',8000000,928);
INSERT INTO fact_edit VALUES(7,49,1,'pack','pasta-sauce',800000,0);
INSERT INTO fact_edit VALUES(8,50,0,'pack','pasta-sauce',800000,0);
INSERT INTO fact_edit VALUES(9,50,0,'price','whole-chicken',8000000,928);
INSERT INTO fact_edit VALUES(10,51,1,'pack','cabbage',150000,0);
INSERT INTO fact_edit VALUES(11,51,1,'price','cabbage',6500,800);
INSERT INTO fact_edit VALUES(12,52,1,'pack','flour',150000,0);
INSERT INTO fact_edit VALUES(13,52,0,'out','flour',0,0);
INSERT INTO fact_edit VALUES(14,55,1,'pack','whole-chicken',850000,0);
INSERT INTO fact_edit VALUES(15,56,1,'price','onion',1609,2156);
CREATE TABLE fact (
    kind TEXT NOT NULL,
    ingredient TEXT NOT NULL,
    amount INTEGER NOT NULL,
    minor INTEGER NOT NULL,
    PRIMARY KEY (kind, ingredient)
) STRICT, WITHOUT ROWID;
INSERT INTO fact VALUES('out','oil',0,0);
INSERT INTO fact VALUES('pack','cabbage',150000,0);
INSERT INTO fact VALUES('pack','flour',150000,0);
INSERT INTO fact VALUES('pack','oil',150000,0);
INSERT INTO fact VALUES('pack','whole-chicken',850000,0);
INSERT INTO fact VALUES('price','cabbage',6500,800);
INSERT INTO fact VALUES('price','milk',1736000,90);
INSERT INTO fact VALUES('price','onion',1609,2156);
INSERT INTO fact VALUES('price','peas',1054575,249);
CREATE TABLE document_edit (
    number INTEGER PRIMARY KEY,
    command INTEGER NOT NULL REFERENCES command (number),
    path TEXT NOT NULL CHECK (path <> ''),
    was TEXT,
    becomes TEXT
) STRICT;
CREATE TABLE landing (number INTEGER PRIMARY KEY REFERENCES document_edit (number)) STRICT;
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
CREATE TRIGGER lot_kept BEFORE DELETE ON lot BEGIN SELECT RAISE(ABORT, 'a lot is never deleted'); END;
CREATE TRIGGER plan_edit_stays BEFORE UPDATE ON plan_edit BEGIN SELECT RAISE(ABORT, 'the past is never changed'); END;
CREATE TRIGGER plan_edit_kept BEFORE DELETE ON plan_edit BEGIN SELECT RAISE(ABORT, 'the past is never deleted'); END;
CREATE TRIGGER plan_edit_next BEFORE INSERT ON plan_edit
WHEN NEW.number IS NOT (SELECT ifnull(max(number), 0) + 1 FROM plan_edit)
BEGIN SELECT RAISE(ABORT, 'edits are numbered in order'); END;
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
CREATE TRIGGER lot_stays BEFORE UPDATE ON lot
WHEN NEW.number <> OLD.number OR NEW.ingredient <> OLD.ingredient OR NEW.dish IS NOT OLD.dish OR NEW.arrived <> OLD.arrived
    OR NEW.dimension <> OLD.dimension OR NEW.also <> OLD.also OR NEW.last_entry IS OLD.last_entry
BEGIN SELECT RAISE(ABORT, 'a lot changes by entries only'); END;
CREATE TRIGGER plan_edit_follows BEFORE INSERT ON plan_edit
WHEN NEW.adds = 0 AND NOT EXISTS (SELECT 1 FROM plan WHERE day = NEW.day AND meal = NEW.meal AND dish = NEW.dish AND
    ready_meal = NEW.ready_meal AND serves IS NEW.serves AND extra = NEW.extra AND swaps = NEW.swaps)
BEGIN SELECT RAISE(ABORT, 'what leaves the plan is in it'); END;
CREATE TRIGGER plan_edit_adds AFTER INSERT ON plan_edit WHEN NEW.adds = 1 BEGIN
    INSERT INTO plan VALUES (NEW.day, NEW.meal, NEW.dish, NEW.ready_meal, NEW.serves, NEW.extra, NEW.swaps);
END;
CREATE INDEX document_edit_command ON document_edit (command);
CREATE TRIGGER document_edit_stays BEFORE UPDATE ON document_edit
BEGIN SELECT RAISE(ABORT, 'the past is never changed'); END;
CREATE TRIGGER document_edit_kept BEFORE DELETE ON document_edit
BEGIN SELECT RAISE(ABORT, 'the past is never deleted'); END;
CREATE TRIGGER document_edit_next BEFORE INSERT ON document_edit
WHEN NEW.number IS NOT (SELECT ifnull(max(number), 0) + 1 FROM document_edit)
BEGIN SELECT RAISE(ABORT, 'edits are numbered in order'); END;
CREATE INDEX entry_got ON entry (day) WHERE kind = 'got';
PRAGMA application_id = 1935764834;
PRAGMA user_version = 3;
COMMIT;
