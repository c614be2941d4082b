export declare const build: (options?: { readonly ifStale?: boolean }) => void;
