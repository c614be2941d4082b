/**
 * What a drawing is made of, in metres of the sheet (x right, y down). The same list becomes SVG text for files and
 * paper, and elements on the screen. Stroke widths are in millimetres of paper or CSS px and do not scale with the sheet.
 */
export type Ink =
  | 'face'
  | 'seam'
  | 'stitch'
  | 'opening'
  | 'fitting'
  | 'detail'
  | 'slide'
  | 'ground'
  | 'hatch'
  | 'dimension'
  | 'host'
  | 'tyre'
  | 'hub'
  | 'selected'
  | 'plate'
  | 'bead'
  | 'mark'
  | 'mark-moving'
  | 'mark-rain'
  | 'mark-season'
  | 'flag'
  | 'text'
  | 'text-small'
  | 'text-number'
  | 'here';

export type Primitive =
  | { readonly form: 'path'; readonly d: string; readonly ink: Ink }
  | { readonly form: 'circle'; readonly cx: number; readonly cy: number; readonly r: number; readonly ink: Ink }
  | {
      readonly form: 'text';
      readonly x: number;
      readonly y: number;
      readonly text: string;
      readonly size: number;
      readonly anchor: 'start' | 'middle' | 'end';
      readonly ink: Ink;
      readonly rotate?: number;
    }
  /** A station or a mark: one focusable thing with a spoken label. `hit` is its touch area. */
  | {
      readonly form: 'group';
      readonly id: string;
      readonly label: string;
      readonly role: 'station' | 'finding' | 'plain';
      readonly hit?: readonly [x: number, y: number, w: number, h: number];
      readonly children: readonly Primitive[];
    };

export type Drawing = { readonly width: number; readonly height: number; readonly title: string; readonly primitives: readonly Primitive[] };
