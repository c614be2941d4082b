export const SlidesPage = (_: Readonly<Record<string, unknown>>) => <main className="desk-page" id="content" />;
