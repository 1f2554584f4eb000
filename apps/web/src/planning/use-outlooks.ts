import type { GigOutlook } from '../diary/gig-marks.ts';
export const useOutlooks = (): ReadonlyMap<string, GigOutlook> => new Map();
