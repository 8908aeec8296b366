interface FormAnswersProps {
  /** What the second answer says, such as `Write origin`. */
  readonly writes: string;
  readonly onClose: () => void;
}

/** The two big answers under a form in a sheet: nothing, or what was typed. */
export function FormAnswers({ writes, onClose }: FormAnswersProps) {
  return (
    <div class="answers">
      <button type="button" class="answer" onClick={onClose}>
        Write nothing
      </button>
      <button type="submit" class="answer answer-yes">
        {writes}
      </button>
    </div>
  );
}
