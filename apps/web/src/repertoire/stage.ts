import { BufferAttribute, BufferGeometry, Mesh, OrthographicCamera, Scene, WebGLRenderer } from 'three';
import { latex, rubberNamed } from './latex.ts';

/** A canvas that can be drawn on. */
export interface Stage {
  readonly canvas: HTMLCanvasElement;
  readonly renderer: WebGLRenderer;
  /** Without a graphics card: what moves is drawn coarsely, and finely once it rests. */
  readonly isSlow: boolean;
}

const waiting: Stage[] = [];

/** Makes a stage while the page still works out what to show on it: most of the wait for a first picture is for its program. */
export function makeReady(): void {
  if (waiting.length > 0) return;
  const stage = newStage();
  if (stage !== undefined) waiting.push(stage);
}

/** A stage, made before or now; undefined where the browser has none to give. Whoever takes it gives its context back. */
export function takeStage(): Stage | undefined {
  const ready = waiting.pop();
  return ready === undefined || ready.renderer.getContext().isContextLost() ? newStage() : ready;
}

function newStage(): Stage | undefined {
  const canvas = document.createElement('canvas');
  // Edges are smoothed by drawing more points than are shown: where there is no graphics card, smoothing by the context makes every frame wait.
  const context = canvas.getContext('webgl2', { alpha: true, antialias: false, stencil: true, powerPreference: 'low-power' });
  if (context === null) return undefined;
  const renderer = new WebGLRenderer({ canvas, context, alpha: true, stencil: true });
  // Our one program is the same everywhere; to ask whether it is right makes the page wait for it.
  renderer.debug.checkShaderErrors = false;
  rehearse(renderer);
  return { canvas, renderer, isSlow: isSoftware(context) };
}

/** Whether the processor draws, not a graphics card. */
function isSoftware(context: WebGL2RenderingContext): boolean {
  const shown = String(context.getParameter(context.RENDERER));
  // Some browsers tell the name only when asked a second way, which others advise against.
  const told = shown.includes('WebKit') ? context.getExtension('WEBGL_debug_renderer_info') : null;
  const name = told === null ? shown : String(context.getParameter(told.UNMASKED_RENDERER_WEBGL));
  return /swiftshader|llvmpipe|software|basic render/iu.test(name);
}

/** Has the program made and run once, on one corner of nothing. */
function rehearse(renderer: WebGLRenderer): void {
  const geometry = new BufferGeometry();
  for (const [name, size] of [
    ['position', 3],
    ['normal', 3],
    ['run', 4],
    ['light', 1],
  ] as const)
    geometry.setAttribute(name, new BufferAttribute(new Float32Array(3 * size), size));
  const material = latex(rubberNamed(undefined), undefined, false);
  const scene = new Scene();
  scene.add(Object.assign(new Mesh(geometry, material), { frustumCulled: false }));
  renderer.setSize(1, 1, false);
  renderer.render(scene, new OrthographicCamera());
  geometry.dispose();
}
