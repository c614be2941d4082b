export declare const findChromium: () => string | undefined;
export declare const ensureChromium: () => string | undefined;
export declare const HOW_TO_GET_ONE: string;
