export { type BoardOptions, type MenuBoard, menuBoardPdf } from './menu-board.ts';
export { packingListPdf } from './packing-list.ts';
export { type PaperProblemCode, paperProblems } from './problem-codes.ts';
export { type CardOptions, recipeCardPdf } from './recipe-card.ts';
export { box, cautionBox, type PaperSize, pageSizes, pdfOf, ruled, type Sheet } from './sheet.ts';
