export { packingListPdf } from './packing-list.ts';
export { box, cautionBox, type PaperSize, pageSizes, pdfOf, ruled, type Sheet } from './sheet.ts';
