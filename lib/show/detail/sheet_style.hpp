// How sheets look: the only style that there is. Plain and typographic: rules and white space, ink on paper. Every text
// has a contrast of at least 7:1 on its ground, light and dark; nothing is said by colour alone.
#pragma once

#include <string_view>

namespace samebase::show::detail {

inline constexpr std::string_view sheet_style = R"(
:root { color-scheme: light dark; --ground: #fffdf8; --ink: #1d1b18; --soft: #4d4841; --rule: #b9b1a4; --edge: #1d1b18; --accent: #7a2b12; }
@media (prefers-color-scheme: dark) {
  :root { --ground: #191816; --ink: #f1ece2; --soft: #c9c1b3; --rule: #5b554b; --edge: #f1ece2; --accent: #ffb59a; }
}
* { box-sizing: border-box; }
body { margin: 0; background: var(--ground); color: var(--ink); font: 1.05rem/1.4 "Iowan Old Style", Palatino, "Noto Serif", "DejaVu Serif", Georgia, serif; overflow-wrap: anywhere; }
main { max-width: 62rem; margin: 0 auto; padding: 1.25rem 1rem 3rem; }
h1, h2, h3 { font-weight: 600; line-height: 1.15; margin: 0 0 .3em; text-wrap: balance; }
h1, .sheet > h2 { font-size: 1.9rem; letter-spacing: -.01em; }
caption, .part > h2, .part > h3 { font-size: 1.2rem; font-weight: 600; text-align: left; margin: 1.2em 0 .25em; padding: 0; }
caption { padding: .9em 0 .2em; }
p { margin: .3em 0; }
.lead { font-size: 1.15rem; max-width: 44em; }
.foot, .note { color: var(--soft); }
.foot { margin-top: 1em; font-size: .95rem; }
a { color: inherit; text-underline-offset: .2em; }
nav { margin: .5em 0 2em; }
nav ul { list-style: none; margin: 0; padding: 0; }
nav li { display: inline; }
nav li + li::before { content: " \00b7 "; }
nav a { display: inline-block; padding: .35em .1em; }
.sheet + .sheet { margin-top: 4rem; border-top: 3px double var(--rule); padding-top: 2rem; }
table { border-collapse: collapse; width: 100%; }
th, td { text-align: left; vertical-align: top; padding: .45em .9em .45em 0; border-top: 1px solid var(--rule); font-weight: 400; }
thead th { border-top: 0; padding-bottom: .2em; color: var(--soft); font-size: .9rem; }
tbody th { font-weight: 600; }
.short, thead th { white-space: nowrap; }
.long { font-size: .82em; line-height: 1.25; }
.endless { font-size: .62em; line-height: 1.2; }
.note { display: block; font-size: .9em; line-height: 1.3; }
.sign { color: var(--accent); font-weight: 700; }
.large tbody td:first-of-type > .text { font-size: 1.3em; line-height: 1.15; }
.large tbody th { white-space: nowrap; font-size: 1.1em; width: 1%; }
.large tbody td:first-of-type { width: 42%; }
.boxes { display: flex; flex-wrap: wrap; gap: .28em; padding-top: .15em; }
.boxes i { width: 1.15em; height: 1.15em; border: 1.5px solid var(--edge); border-radius: 2px; }
.blank:first-child { margin-top: .1em; }
.boxes i:nth-child(5n):not(:last-child) { margin-right: .5em; }
.blank { display: block; min-width: 4.5em; height: 1.3em; border-bottom: 1px solid var(--edge); }
ol, ul { margin: .3em 0; padding-left: 1.5em; }
li { margin: .25em 0; }
.calendar { table-layout: fixed; }
.calendar td { padding: .35em .5em; border: 1px solid var(--rule); height: 5.2em; line-height: 1.2; }
.calendar td.other { border-color: transparent; }
.calendar thead th { padding-left: .5em; }
.date { display: block; font-weight: 600; font-size: 1.05em; }
.weekday { display: none; }
.picture { width: 100%; height: auto; max-height: 24rem; }
@media screen and (max-width: 46rem) {
  main { padding: 1rem .9rem 2.5rem; }
  table, tbody, tr, th, td, caption { display: block; width: auto; }
  thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
  tbody tr { border-top: 1px solid var(--rule); padding: .5em 0; }
  tbody th, tbody td { border: 0; padding: .1em 0; }
  tbody td:empty, td.none, .calendar td.other { display: none; }
  td[data-column]::before { content: attr(data-column) ": "; color: var(--soft); font-size: .9em; }
  td[data-column] > .text, td[data-column]::before, td[data-column] > .note:first-child { display: inline; }
  .large tbody td:first-of-type { width: auto; }
  .plain tbody td { display: inline-block; margin-right: 1.2em; }
  .large tbody th { white-space: normal; font-size: 1em; }
  .calendar tbody tr { border: 0; padding: 0; }
  .large.tight tbody td:first-of-type > .text, .large.tight .note, .large.tight .text.long { font-size: 8.5pt; }
  .large.tight tbody td:first-of-type > .text.endless, .large.tight .note.endless { font-size: 6.5pt; }
  .tight.large tbody td, .tight.large tbody th { padding-top: 1mm; padding-bottom: 1mm; }
  .calendar td { height: auto; border: 0; border-top: 1px solid var(--rule); padding: .5em 0; }
  .weekday { display: inline; }
}
@page { size: A4 portrait; margin: 12mm; }
@page wide { size: A4 landscape; margin: 10mm; }
@media print {
  :root { color-scheme: light; --ground: #fff; --ink: #000; --soft: #333; --rule: #999; --edge: #000; --accent: #000; }
  body { font-size: 11pt; line-height: 1.3; }
  main { max-width: none; padding: 0; }
  nav { display: none; }
  .sheet { page: auto; }
  .sheet.landscape { page: wide; }
  .sheet + .sheet { break-before: page; margin: 0; padding: 0; border: 0; }
  h1, .sheet > h2 { font-size: 22pt; }
  .lead { font-size: 12pt; }
  tr { break-inside: avoid; }
  .dense table { break-inside: avoid; }
  th, td { padding-top: 1.1mm; padding-bottom: 1.1mm; }
  .dense .parts { columns: 2; column-gap: 10mm; }
  .dense { font-size: 10pt; }
  .dense .blank { min-width: 14mm; height: 4mm; }
  .dense td, .dense th { padding: .8mm 2.5mm .8mm 0; }
  .dense caption { font-size: 12pt; }
  .dense tbody th { font-weight: 500; }
  .large tbody td:first-of-type > .text { font-size: 19pt; }
  .large .note { font-size: 11pt; }
  .large tbody th { font-size: 13pt; }
  .large tbody td, .large tbody th { padding-top: 2.6mm; padding-bottom: 2.6mm; }
  .large tbody td:first-of-type > .text.long { font-size: 14pt; }
  .large tbody td:first-of-type > .text.endless { font-size: 8pt; }
  .large.tight tbody td:first-of-type > .text, .large.tight .note, .large.tight .text.long { font-size: 8.5pt; }
  .large.tight tbody td:first-of-type > .text.endless, .large.tight .note.endless { font-size: 6.5pt; }
  .tight.large tbody td, .tight.large tbody th { padding-top: 1mm; padding-bottom: 1mm; }
  .calendar td { height: 23mm; font-size: 10.5pt; padding: 1mm 1.5mm; }
  .calendar.roomy td { height: 24mm; font-size: 11.5pt; }
  .calendar .short { white-space: normal; }
  .calendar td .note { font-size: 9.5pt; }
  .calendar td .long { font-size: 9.5pt; }
  .calendar td .endless { font-size: 5.5pt; }
  .picture { max-height: 90mm; }
}
)";

}  // namespace samebase::show::detail
