export { BooksScreen } from './BooksScreen.tsx';
export { MoreScreen } from './MoreScreen.tsx';
