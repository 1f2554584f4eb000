export { checkFrame, type Frame, type FrameEdge, type FrameJoint, longestEdgeInches, mostFrameEdges, shortestEdgeInches } from './frame.ts';
export { type ReadyFrame, type ReadyKind, readyFrame, readyFrames } from './ready-frames.ts';
export { type Trail, trailInches, trailNames, verifyTrails } from './trail.ts';
