export const PrintPage = (_: Readonly<Record<string, unknown>>) => <main className="desk-page" id="content" />;
