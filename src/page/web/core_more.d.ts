// Short names for what the core says of a form.
import 'swathe';

declare module 'swathe' {
  type FieldValue = Field;
  type Words = Awaited<ReturnType<Swathe['words']>>;
}
