export const SampleSheet = () => null;
