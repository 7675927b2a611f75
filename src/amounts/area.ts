import { polygonArea } from '../base/geometry.ts';
import type { SquareMetres } from '../base/units.ts';
import type { AreaShape, Shape } from '../model/shape.ts';

/** Area of a shape [m²]. */
function shapeArea(shape: Shape): SquareMetres {
  switch (shape.kind) {
    case 'rectangle':
      return shape.sides[0] * shape.sides[1];
    case 'circle':
      return Math.PI * shape.radius ** 2;
    case 'triangle':
      return (shape.base * shape.height) / 2;
    case 'sides': {
      const [a, b, c] = shape.sides;
      const s = (a + b + c) / 2;
      return Math.sqrt(s * (s - a) * (s - b) * (s - c)); // Heron
    }
    case 'polygon':
      return polygonArea(shape.corners);
    case 'measured':
      return shape.area;
  }
}

/** Area of a measured shape less the parts taken off it [m²]; 0 or below where more is taken off than there is. */
export const netArea = ({ shape, less }: AreaShape): SquareMetres =>
  less.reduce((left, part) => left - shapeArea(part), shapeArea(shape));
