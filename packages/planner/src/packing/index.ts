export { type PackingLine, type PackingPlace, type PackingPlan, packFor, type Take } from './pack-for.ts';
