export { bestView, type Camera, cameraOf, type View, views } from './camera.ts';
export { type Mark, marksOf } from './faces.ts';
export { type PictureFrame, type PictureOptions, pictureFrame, pictureOf, pictureOfShape, type RoleColours } from './picture-of.ts';
export { type Rubber, rubberOf, rubbers, showsInk, type Tones, takesInk } from './rubber.ts';
