import { type Rubber, rubberOf, showsInk, takesInk } from '@twistwright/repertoire';
import { GLSL3, NotEqualStencilFunc, RawShaderMaterial, ReplaceStencilOp, Vector3 } from 'three';
import type { Ink } from './decals.ts';

/**
 * Glossy latex in the tones of the flat pictures: light from the upper left, each tone within the one before, a streak of gloss, a thin
 * darker edge, and what the surroundings throw back on the side of the shade. Everything is drawn with this one small program, because
 * it is the making of programs that a page without a graphics card waits for.
 */
const vertexShader = `
uniform mat4 modelViewMatrix;
uniform mat4 projectionMatrix;
uniform mat3 normalMatrix;
in vec3 position;
in vec3 normal;
in vec4 run;
in float light;
out vec3 facing;
out vec3 way;
out float lit;
out float share;
void main() {
  facing = normalMatrix * normal;
  way = normalMatrix * run.xyz;
  lit = light;
  // The streak lies on the half of a straight bubble that is nearer to the light, as a window's would.
  share = run.w < 0. ? -1. : dot(way.xy, vec2(-.62, .78)) > 0. ? 1. - run.w : run.w;
  gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.);
}`;
const fragmentShader = `
precision highp float;
uniform vec3 tones[7];
uniform vec3 rim;
uniform float edge;
uniform float sheen;
uniform float opacity;
in vec3 facing;
in vec3 way;
in float lit;
in float share;
out vec4 seen;
const vec2 sun = vec2(-.62, .78);
// Where the light falls on the rubber: across a tube and along its round ends, or simply across a ball.
vec2 place;
vec2 from;
float within(float at, float wide, float soft) {
  return 1. - smoothstep(wide - soft, wide + soft, length(place - at * from));
}
void main() {
  vec3 front = normalize(facing);
  vec3 colour = tones[0];
  if (sheen >= 0.) {
    float whole = length(way);
    bool isTube = whole > .5;
    place = front.xy;
    from = sun;
    if (isTube) {
      float level = length(way.xy) / whole;
      vec2 along = way.xy / max(.001, whole * level);
      vec2 aside = vec2(-along.y, along.x);
      // A tube that points at the viewer is seen as a ball.
      float seenAside = smoothstep(.3, .8, level);
      float end = dot(front, way) / whole;
      place = vec2(mix(dot(front.xy, along), end * level, seenAside), dot(front.xy, aside));
      from = vec2(dot(sun, along) * mix(1., abs(end), seenAside), dot(sun, aside));
    }
    colour = mix(colour, tones[1], within(.07, .85, .06));
    colour = mix(colour, tones[2], within(.15, .75, .08));
    colour = mix(colour, tones[3], within(.23, .63, .1));
    colour = mix(colour, tones[4], within(.3, .47, .1));
    colour = mix(colour, tones[5], within(.36, .3, .1));
    if (sheen == 1.) colour = mix(colour, vec3(1.), .38 * within(.31, .45, .12));
    if (sheen == 2.) colour = mix(colour, vec3(1.), .8 * within(-.42, .1, .04));
    if (sheen == 3.) colour = mix(colour, vec3(1.), .42 * within(0., .55, .06));
    colour = mix(.72 * tones[1], colour, lit);
    float gloss = within(.46, .14, .03);
    if (share >= 0.) gloss *= smoothstep(.1, .14, share) * (1. - smoothstep(.54, .58, share));
    else if (isTube) gloss *= smoothstep(.5, .64, abs(from.y)) * (1. - smoothstep(.1, .3, abs(place.x)));
    else gloss = (1. - smoothstep(.07, .1, abs(length(place) - .64))) * smoothstep(.84, .88, dot(place, sun) / max(.01, length(place)));
    colour = mix(colour, tones[6], gloss);
    colour = mix(colour, rim, smoothstep(1. - 1.6 * edge, 1. - .6 * edge, length(front.xy)));
  }
  seen = vec4(colour, opacity);
}`;

/** How a finish shines, as the program knows it. Below 0: not at all, one colour. */
const sheens: Readonly<Record<string, number>> = { pearl: 1, mirror: 2, metallic: 2, clear: 3, jewel: 3 };
const flatSheen = -1;
/** Width of the edge as a share of the bubble's radius. */
const edgeShare = 0.07;
const missing = rubberOf('sky') as Rubber;

/** Three numbers from 0 to 1, as they are written: the page's own colours, nothing computed in linear light. */
function channels(hex: string): Vector3 {
  const part = (from: number): number => Number.parseInt(hex.slice(from, from + 2), 16) / 255;
  return hex.length === 4
    ? channels(`#${[...hex.slice(1)].map((digit) => digit + digit).join('')}`)
    : new Vector3(part(1), part(3), part(5));
}

interface Coat {
  readonly tones: readonly string[];
  readonly rim: string;
  readonly sheen: number;
  readonly opacity: number;
}

function material({ tones, rim, sheen, opacity }: Coat): RawShaderMaterial {
  return new RawShaderMaterial({
    glslVersion: GLSL3,
    vertexShader,
    fragmentShader,
    uniforms: {
      tones: { value: Array.from({ length: 7 }, (_, k) => channels(tones[k] ?? (tones[0] as string))) },
      rim: { value: channels(rim) },
      edge: { value: edgeShare },
      sheen: { value: sheen },
      opacity: { value: opacity },
    },
    transparent: opacity < 1,
    depthWrite: opacity === 1,
  });
}

export const rubberNamed = (paint: string | undefined): Rubber => (paint === undefined ? undefined : rubberOf(paint)) ?? missing;

/** The rubber of a balloon. */
export function latex({ tones, rim, rimOnDark }: Rubber, finish: string | undefined, isDark: boolean): RawShaderMaterial {
  return material({
    tones: [tones.back, tones.core, tones.dim, tones.body, tones.half, tones.lit, tones.gloss],
    rim: isDark ? rimOnDark : rim,
    sheen: finish === undefined ? 0 : (sheens[finish] ?? 0),
    opacity: 1,
  });
}

const inkBlack = '#15171b';

/** What is drawn or printed on it. */
export function inkOn(rubber: Rubber, ink: Ink): RawShaderMaterial {
  const one = (colour: string, opacity = 1): RawShaderMaterial => material({ tones: [colour], rim: colour, sheen: flatSheen, opacity });
  switch (ink) {
    case 'white':
      return one('#ffffff');
    case 'black':
      return one(inkBlack);
    case 'pen':
      return one(showsInk(rubber) ? inkBlack : '#ffffff');
    case 'band':
      return one(takesInk(rubber) ? inkBlack : '#ffffff', 0.88);
    case 'heart':
      return one(takesInk(rubber) ? '#d61f2e' : '#ffffff');
    case 'star':
      return one(takesInk(rubber) ? '#2058cc' : '#ffffff');
    case 'shade':
      return one(rubber.deep, 0.75);
    case 'blush':
      return one('#f48bb6', 0.7);
  }
}

/** Numbers in the stencil: what is see-through is laid on once, however many of its parts lie over one another. */
const marks = { ghost: 1, shadow: 2 } as const;

function once(colour: string, opacity: number, mark: number): RawShaderMaterial {
  const made = material({ tones: [colour], rim: colour, sheen: flatSheen, opacity });
  made.stencilWrite = true;
  made.stencilRef = mark;
  made.stencilFunc = NotEqualStencilFunc;
  made.stencilZPass = ReplaceStencilOp;
  return made;
}

/** What is still to be made. */
export const ghost = (): RawShaderMaterial => once('#787d82', 0.13, marks.ghost);

/** The shadow on the floor. */
export const floorShadow = (isDark: boolean): RawShaderMaterial => once('#000000', isDark ? 0.5 : 0.15, marks.shadow);
