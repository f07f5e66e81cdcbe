// Stands in for react-devtools-core, which Ink loads where DEV is set in the environment: a show is never
// inspected from outside, and Ink finds nothing there to connect to.
const nothing = () => {};
export default { initialize: nothing, connectToDevTools: nothing };
