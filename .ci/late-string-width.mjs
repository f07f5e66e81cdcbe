// string-width as it is, loaded when the first text asks for it: what it makes at once, for characters that few
// shows hold, takes as long as reading a whole show. By its path, since the bundler puts this in its place.
const library = () => require('../node_modules/string-width/index.js');
export default (text, options) => library().default(text, options);
