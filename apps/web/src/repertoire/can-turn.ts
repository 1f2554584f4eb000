/** Whether the browser can draw bodies in space. */
export function canTurn(): boolean {
  try {
    const context = document.createElement('canvas').getContext('webgl2');
    context?.getExtension('WEBGL_lose_context')?.loseContext();
    return context !== null;
  } catch {
    return false; // some browsers throw where the drawing of bodies is switched off
  }
}
