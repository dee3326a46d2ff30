// What the page shows of the open job. Each is a region of the page with its own heading, and takes
// the size that it is given: "From above", "Cover", "Cut-through", "Who can read it".
export { Pictures, type Place } from './Pictures';
export { WhoCanRead } from './WhoCanRead';
