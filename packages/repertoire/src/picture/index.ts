export { bestView, type View, views } from './camera.ts';
export { type Mark, marksOf } from './faces.ts';
export { type PictureOptions, pictureOf, pictureOfShape, type RoleColours } from './picture-of.ts';
export { type Rubber, rubberOf, rubbers } from './rubber.ts';
