export const GigPage = () => null;
