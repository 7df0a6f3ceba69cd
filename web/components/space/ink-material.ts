import { BackSide, Color, DoubleSide, LinearSRGBColorSpace, ShaderMaterial } from 'three';

/**
 * A tube as ink on paper. Colours of the style sheet are put on the screen as they are, without the light of a scene,
 * so that the drawing in space is of the same ink as the flat one.
 */
const SKIN = {
  vertex: `
    varying vec3 seen;
    void main() {
      seen = normalize(normalMatrix * normal);
      gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
    }`,
  // light from the upper left, as shade falls on technical drawings (common practice)
  fragment: `
    uniform vec3 lit;
    uniform vec3 shade;
    varying vec3 seen;
    void main() {
      float light = dot(normalize(seen), normalize(vec3(-0.45, 0.65, 0.6)));
      gl_FragColor = vec4(mix(shade, lit, smoothstep(-0.35, 0.75, light)), 1.0);
    }`,
};

/** The same skin a little larger and seen from within: what stands out round the tube is its outline. */
const OUTLINE = {
  vertex: `
    uniform float width;
    void main() {
      gl_Position = projectionMatrix * modelViewMatrix * vec4(position + normal * width, 1.0);
    }`,
  fragment: `
    uniform vec3 ink;
    void main() {
      gl_FragColor = vec4(ink, 1.0);
    }`,
};

/** A colour of the style sheet, as numbers that go to the screen unchanged. */
export const colourOf = (css: string): Color => new Color().setStyle(css.trim(), LinearSRGBColorSpace);

export const skinMaterial = (): ShaderMaterial =>
  new ShaderMaterial({
    vertexShader: SKIN.vertex,
    fragmentShader: SKIN.fragment,
    uniforms: { lit: { value: new Color() }, shade: { value: new Color() } },
    side: DoubleSide,
  });

/** `width` is that of the line in millimetres of the frame, so that it can be held at so many pixels. */
export const outlineMaterial = (): ShaderMaterial =>
  new ShaderMaterial({
    vertexShader: OUTLINE.vertex,
    fragmentShader: OUTLINE.fragment,
    uniforms: { ink: { value: new Color() }, width: { value: 0 } },
    side: BackSide,
  });
