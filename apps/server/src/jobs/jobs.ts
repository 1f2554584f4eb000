import { checkWholeBook, newProblems, ownBook, readBookFile, readPriceList, writeBookFile } from './book-jobs.ts';
import { balloonsKnown, balloonTestTried } from './calibration-jobs.ts';
import { figureCard, figureList, figurePicture, figureShown, menuBoard, recipeProblems } from './figure-jobs.ts';
import { frame } from './frame-jobs.ts';
import { greeting } from './greeting-job.ts';
import { cover, kit, kitGrowth, kitHandout, kitHtml, kitLearningSheet, kitList, kitNearest } from './kit-jobs.ts';
import { advice, plan, whatIf } from './plan-jobs.ts';

/** What a thread can do, by name: plain data in, an outcome out. */
export const jobs = {
  readBookFile,
  writeBookFile,
  ownBook,
  newProblems,
  checkWholeBook,
  readPriceList,
  plan,
  advice,
  whatIf,
  greeting,
  kit,
  kitGrowth,
  kitHandout,
  kitLearningSheet,
  kitHtml,
  kitList,
  kitNearest,
  cover,
  figureShown,
  figurePicture,
  figureCard,
  figureList,
  menuBoard,
  recipeProblems,
  frame,
  balloonsKnown,
  balloonTestTried,
} as const;
export type JobMap = typeof jobs;
