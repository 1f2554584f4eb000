import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { type Caution, deference, prescribedWording } from '@twistwright/books';
import type { Content, TDocumentDefinitions } from 'pdfmake/interfaces.js';

interface PdfMaker {
  setFonts(fonts: object): void;
  setUrlAccessPolicy(policy: (url: string) => boolean): void;
  setLocalAccessPolicy(policy: (path: string) => boolean): void;
  createPdf(definition: TDocumentDefinitions): { getBuffer(): Promise<Uint8Array> };
}
const require = createRequire(import.meta.url);
const maker = require('pdfmake') as PdfMaker;
const fontFolder = join(dirname(require.resolve('dejavu-fonts-ttf/package.json')), 'ttf');
maker.setFonts({
  sans: {
    normal: join(fontFolder, 'DejaVuSansCondensed.ttf'),
    bold: join(fontFolder, 'DejaVuSansCondensed-Bold.ttf'),
    italics: join(fontFolder, 'DejaVuSansCondensed-Oblique.ttf'),
    bolditalics: join(fontFolder, 'DejaVuSansCondensed-BoldOblique.ttf'),
  },
});
maker.setUrlAccessPolicy(() => false);
maker.setLocalAccessPolicy((path) => path.startsWith(fontFolder));

export type PaperSize = 'A4' | 'Letter' | 'A3' | 'Tabloid';
/** Points; 72 to the inch. */
export const pageSizes: Readonly<Record<PaperSize, { readonly width: number; readonly height: number }>> = {
  A4: { width: 595.28, height: 841.89 },
  Letter: { width: 612, height: 792 },
  A3: { width: 841.89, height: 1190.55 },
  Tabloid: { width: 792, height: 1224 },
};

/** What every printed page of ours has: a title sentence, a line under it, a foot with whose it is and "page of pages". */
export interface Sheet {
  readonly title: string;
  readonly under?: string;
  /** Left part of the foot: whose this is, on what it rests. */
  readonly foot: string;
  readonly content: readonly Content[];
  readonly size?: PaperSize;
  readonly landscape?: boolean;
  /** Day the paper was made, ISO date; also the date inside the file, so that the same facts give the same bytes. */
  readonly made: string;
  /** Points on each side, default 42. */
  readonly margin?: number;
  /** Size of the title in points, default 20. */
  readonly titlePoints?: number;
}

/** The sheet as PDF, black on white, text selectable; the same input gives the same bytes. */
export async function pdfOf(sheet: Sheet): Promise<Uint8Array> {
  const margin = sheet.margin ?? 42;
  const page = pageSizes[sheet.size ?? 'A4'];
  const definition: TDocumentDefinitions = {
    pageSize: sheet.landscape === true ? { width: page.height, height: page.width } : { ...page },
    pageMargins: [margin, margin, margin, margin + 14],
    defaultStyle: { font: 'sans', fontSize: 10.5, lineHeight: 1.15, color: '#15171b' },
    info: { title: sheet.title, creationDate: new Date(`${sheet.made}T00:00:00Z`) },
    content: [
      { text: sheet.title, fontSize: sheet.titlePoints ?? 20, bold: true, lineHeight: 1.05 },
      ...(sheet.under === undefined ? [] : [{ text: sheet.under, margin: [0, 3, 0, 0] as [number, number, number, number] }]),
      { text: '', margin: [0, 0, 0, 10] },
      ...sheet.content,
    ],
    footer: (current, count) => ({
      columns: [
        { text: sheet.foot, width: '*' },
        { text: `page ${current} of ${count}`, width: 'auto' },
      ],
      fontSize: 8.5,
      margin: [margin, 8, margin, 0],
    }),
  };
  return maker.createPdf(definition).getBuffer();
}

/** How many pages a PDF of ours has. */
export const pagesOf = (pdf: Uint8Array): number => new TextDecoder('latin1').decode(pdf).match(/\/Type \/Page\b/gu)?.length ?? 0;

/** A square box for a pen. A new node each time, because the PDF library writes into the nodes that it is given. */
export const box = (size = 11): Content => ({
  canvas: [{ type: 'rect', x: 0, y: 1, w: size, h: size, lineWidth: 1.2, lineColor: '#15171b' }],
});

/**
 * Cautions in a frame, with the wording that the country's law prescribes on packs, its citation, and who decides; in letters of so many
 * points, what only cites in smaller ones.
 */
export function cautionBox(cautions: readonly Caution[], country: string | undefined, points = 9.5): Content {
  const wording = prescribedWording(country);
  const small = Math.min(8, points * 0.9);
  return {
    margin: [0, points * 1.25, 0, 0],
    unbreakable: true,
    table: {
      widths: ['*'],
      body: [
        [
          {
            margin: [4, 3, 4, 3],
            fontSize: points,
            stack: [
              { text: cautions.map((caution) => caution.text).join(' ') },
              ...(wording === undefined
                ? []
                : [
                    { text: wording.text, bold: true, margin: [0, 5, 0, 0] as [number, number, number, number] },
                    { text: `${wording.citation}; ${wording.where}.`, fontSize: small },
                  ]),
              { text: deference, fontSize: small, margin: [0, 4, 0, 0] },
            ],
          },
        ],
      ],
    },
  };
}

/** Table lines of ours: a strong line under the head, hairlines between rows. */
export const ruled = {
  hLineWidth: (line: number, node: { table: { body: unknown[] } }): number =>
    line === 1 || line === node.table.body.length ? 1.2 : line === 0 ? 0 : 0.4,
  vLineWidth: (): number => 0,
  hLineColor: (line: number): string => (line === 1 ? '#15171b' : '#9a9ea3'),
  paddingLeft: (column: number): number => (column === 0 ? 0 : 6),
  paddingRight: (): number => 6,
  paddingTop: (): number => 3.5,
  paddingBottom: (): number => 3.5,
};
