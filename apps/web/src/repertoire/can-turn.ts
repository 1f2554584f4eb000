/** Whether it is worth trying to draw bodies in space: whether the browser knows how. A page finds out whether it also can when it tries. */
export const canTurn = (): boolean => 'WebGL2RenderingContext' in globalThis;
