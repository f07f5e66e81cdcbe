// Stands in for react-devtools-core, which Ink imports for development only.
export {};
