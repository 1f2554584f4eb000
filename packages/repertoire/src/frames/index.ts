export { checkFrame, type Frame, type FrameEdge, type FrameJoint, longestEdgeInches, mostFrameEdges, shortestEdgeInches } from './frame.ts';
export { type FramePlan, type FrameWishes, leastBalloons, planFrame } from './plan-frame.ts';
export { readFrame, writeFrame } from './read-frame.ts';
export { readFrameJson } from './read-frame-json.ts';
export { type ReadyFrame, type ReadyKind, readyFrame, readyFrames } from './ready-frames.ts';
export { type FrameMaking, recipeOfFrame } from './recipe-of-frame.ts';
export { type Trail, trailInches, trailNames, verifyTrails } from './trail.ts';
