/** A length, a duration or an area as it stands in a file: `50 ft`. */
type Written = string;

/** A shape as it stands in a lawn file; the lawn's schema says which keys go together. */
export type WrittenShape = Readonly<Record<string, unknown>>;

/**
 * A lawn file in the making: its values as they will stand in the file, with what is not yet known, or left out, absent.
 * Nothing in it is true until `LawnSchema` has seen it.
 */
export interface Draft {
  readonly id?: string;
  readonly name?: string;
  readonly location?: {
    readonly zip?: string;
    readonly latitude?: number;
    readonly longitude?: number;
    readonly elevation?: Written;
  };
  readonly display?: { readonly units?: string; readonly language?: string };
  readonly grass?: string;
  readonly program?: string;
  readonly products?: readonly string[];
  readonly areas?: Readonly<Record<string, WrittenShape>>;
  readonly equipment?: {
    readonly spreader?: {
      readonly kind?: string;
      readonly swath?: Written;
      readonly dial?: { readonly from: number; readonly to: number; readonly step: number };
    };
  };
  readonly working?: {
    readonly days?: readonly string[];
    readonly between?: readonly string[];
    readonly remind?: readonly Written[];
  };
  readonly weather?: {
    readonly files?: readonly string[];
    readonly units?: string;
    readonly service?: string;
    readonly forecast?: string;
  };
}
