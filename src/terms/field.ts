import type * as z from 'zod/mini';
import type { Limits, QuantityId, Typed, UnitSystem } from '../units';

export type Option = {
  readonly id: string;
  readonly word: string;
  /** One line that says when this is the right answer. */
  readonly line?: string;
};

type Common = {
  /** Short name of the field as people read it. */
  readonly label: string;
  /** What is asked for, and what it is not. */
  readonly meaning?: string;
  readonly optional?: boolean;
  /** Shown only when another choice field has one of these answers, or a many field holds one of them. */
  readonly showIf?: { readonly field: string; readonly in: readonly string[] };
};

/** The only ways in which a kind may ask. Forms, validation, published schemas and docs are all made from these. */
export type Field =
  | (Common & { readonly type: 'choice'; readonly options: readonly Option[] /** Name of a picture set drawn in the app. */; readonly pictures?: string })
  | (Common & { readonly type: 'many'; readonly options: readonly Option[] | 'defects-of-station' })
  | (Common & {
      readonly type: 'number';
      readonly quantity: QuantityId;
      /** In SI. What cannot be: outside it is a refusal. */
      readonly limits: Limits;
      /** In SI. Outside it the person is asked whether figure and unit are right; never refused. */
      readonly usual?: Limits;
      /** Units in which this field is asked, where they are not the quantity's own: tread in 1/32 in. */
      readonly units?: Readonly<Record<UnitSystem, string>>;
      /** Field that is read together with it. */
      readonly partner?: string;
    })
  | (Common & { readonly type: 'text'; readonly most?: number })
  | (Common & { readonly type: 'code'; readonly code: 'tyre-date' | 'tyre-size' })
  | (Common & { readonly type: 'day' })
  | (Common & { readonly type: 'flag' })
  /** Structured data that no person types: a layout's result, a changed body. */
  | (Common & { readonly type: 'data'; readonly schema: z.ZodMiniType });

export type Fields = Readonly<Record<string, Field>>;

type Answer<F extends Field> = F extends { type: 'choice'; options: readonly (infer O extends Option)[] }
  ? O['id']
  : F extends { type: 'many'; options: infer O }
    ? readonly (O extends readonly (infer P extends Option)[] ? P['id'] : string)[]
    : F extends { type: 'number' }
      ? Typed
      : F extends { type: 'flag' }
        ? boolean
        : F extends { type: 'data'; schema: infer S extends z.ZodMiniType }
          ? z.output<S>
          : string;

type Asked<F extends Field> = F extends { optional: true } ? false : F extends { showIf: object } ? false : true;

/** The body of a kind, derived from its fields: what is optional or conditional may be missing. */
export type BodyOf<F extends Fields> = { readonly [K in keyof F as Asked<F[K]> extends true ? K : never]: Answer<F[K]> } & {
  readonly [K in keyof F as Asked<F[K]> extends true ? never : K]?: Answer<F[K]>;
};
