export const Shopping = () => null;
