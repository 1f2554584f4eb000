import { type Book, deference, prescribedWording } from '@twistwright/books';
import { type KitLesson, lessonsOfKit } from '@twistwright/planner';
import { longDate, readDate, showMoney } from '@twistwright/units';
import { absolute, qrSvg, vCardOf } from './contact-card.ts';
import {
  bareSite,
  type KitPaper,
  kitCautions,
  kitSentences,
  type ListRow,
  type ListShop,
  nextNote,
  nextRows,
  nextTitle,
  shopsOf,
  titleOf,
} from './kit-handout-list.ts';
import { kitPageStyle } from './kit-page-style.ts';
import { lessonMinutes, lessonNew, lessonPicture, lessonsTitle, lessonTakes } from './learning-sheet.ts';

/** Text as it may stand between tags and in quoted attributes. */
const safe = (text: string): string => text.replace(/&/gu, '&amp;').replace(/</gu, '&lt;').replace(/>/gu, '&gt;').replace(/"/gu, '&quot;');

/**
 * The first kit as one HTML file that opens without the app, without a network and without scripts: the list with boxes, the figures to
 * learn with their pictures, cautions, the coach's contact. Light and dark follow the reader's system; it prints black on white.
 * @param made day it was made, ISO date
 */
export function kitPage(book: Book, paper: KitPaper, made: string): string {
  const { currency, name } = book.business;
  const shops = shopsOf(book, paper.plan);
  const lessons = lessonsOfKit(book, paper.plan.kit, paper.wishes.have);
  const title = titleOf(paper, shops, currency);
  const day = readDate(made);
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>${safe(title)}</title>
<style>${kitPageStyle}</style>
</head>
<body>
<main>
<h1>${safe(title)}.</h1>
<p class="lead">${safe(kitSentences(paper))}</p>
${shops.map((shop) => shopSection(shop, (amount) => showMoney(amount, currency))).join('\n')}
${nextSection(book, paper)}
${contactSection(book)}
${lessonsSection(book, lessons)}
${cautionSection(book, paper)}
</main>
<footer><p>${safe(name)}${day === undefined ? '' : `, ${longDate(day)}`}. Ticks last as long as this page is open; print it to keep them.</p></footer>
</body>
</html>
`;
}

function shopSection(shop: ListShop, show: (amount: ListShop['total']) => string): string {
  const site = shop.site === undefined ? '' : ` <span class="note">${safe(bareSite(shop.site))}</span>`;
  return `<section>
<h2>${safe(shop.name)}.${site}</h2>
<ul class="list">
${shop.rows.map((row) => rowItem(row, show(row.price))).join('\n')}
</ul>
${shop.carriage === undefined || shop.carriage === 0 ? '' : `<p class="sum"><span>Carriage</span><span>${show(shop.carriage)}</span></p>`}
${shop.leastOrder === undefined ? '' : `<p class="note">Takes orders from ${show(shop.leastOrder)}.</p>`}
<p class="sum all"><span>In all</span><span>${show(shop.total)}</span></p>
</section>`;
}
const rowItem = (row: ListRow, price: string): string =>
  `<li><label><input type="checkbox"><span class="swatch">${row.swatch ?? ''}</span><span class="what"><b>${safe(row.what)}</b><small>${safe(row.count)}</small></span><span class="why">${safe(row.why)}</span><span class="price">${price}</span></label></li>`;

function nextSection(book: Book, { plan }: KitPaper): string {
  const rows = nextRows(book, plan);
  if (rows.length === 0) return '';
  return `<section>
<h2>${nextTitle}</h2>
<ul class="list">
${rows.map((row) => `<li><label><input type="checkbox"><span class="what wide"><b>${safe(row.what)}</b><small>${safe(row.gain)}</small></span><span class="price">${row.price}</span></label></li>`).join('\n')}
</ul>
<p class="note">${nextNote}</p>
</section>`;
}

function lessonsSection(book: Book, lessons: readonly KitLesson[]): string {
  if (lessons.length === 0) return '';
  return `<section class="lessons">
<h2>${lessonsTitle(lessons)}</h2>
<p class="note">Each can be made from this kit, and adds as little as possible to what your hands know by then.</p>
<ol>
${lessons
  .map(
    (lesson) =>
      `<li>${lessonPicture(book, lesson)}<div><label><input type="checkbox"><b>${safe(lesson.facts.figure.name)}</b></label><p>${safe(lessonTakes(book, lesson))}</p><p class="note">${safe(lessonMinutes(lesson))}. ${safe(lessonNew(lesson))}</p></div></li>`,
  )
  .join('\n')}
</ol>
</section>`;
}

function contactSection(book: Book): string {
  const { name, contact = {} } = book.business;
  const { person, phone, email, site, address } = contact;
  const link = (address_: string, text: string): string => `<p><a href="${safe(address_)}">${safe(text)}</a></p>`;
  return `<section class="contact">
<div>
<h2>Ask before you buy something else.</h2>
<p><b>${safe(person ?? name)}</b></p>
${person === undefined ? '' : `<p>${safe(name)}</p>`}
${phone === undefined ? '' : link(`tel:${phone.replace(/[^+\d]/gu, '')}`, phone)}
${email === undefined ? '' : link(`mailto:${email}`, email)}
${site === undefined ? '' : link(absolute(site), bareSite(site))}
${address === undefined ? '' : `<p>${safe(address)}</p>`}
</div>
${qrSvg(vCardOf(book.business), 'The same contact for a phone')}
</section>`;
}

function cautionSection(book: Book, paper: KitPaper): string {
  const wording = prescribedWording(book.business.country);
  return `<section class="care">
<p>${kitCautions(book, paper.plan)
    .map((caution) => safe(caution.text))
    .join(' ')}</p>
${wording === undefined ? '' : `<p><b>${safe(wording.text)}</b></p><p class="note">${safe(wording.citation)}; ${safe(wording.where)}.</p>`}
<p class="note">${safe(deference)}</p>
</section>`;
}
