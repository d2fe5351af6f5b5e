/**
 * What a package exports and the umbrella does not: a page of names is read, three pages are not. Left out
 * are types that are a part of another or the options of one function (`Score['timing']`,
 * `Parameters<typeof makeTuning>[1]` reach them), tables that describe the working of one package, and what
 * another name does as well, as `makeChart('basic', 'G')` needs no `formById`. All of it is in its package.
 */
export const LEFT_OUT: Readonly<Record<string, readonly string[]>> = {
  pitch: names(`
    HIGHEST_MIDI LETTERS LOWEST_MIDI NOTE_NAMES PITCH_CLASSES SCALE_DEGREES TONICS chordSuffixes
    plainName spellAbove spellOnStep toKey Accidental ChordTone ErrorDetails ErrorPlace ErrorRecord
    FrequencyOptions Letter Mode NoteNameParts Numeral NumeralAlteration NumeralStep NumeralTarget
    SpellingOptions TonalChord TonalKey TonalNote TonalScale Tonic TransposeKeyOptions
  `),
  line: names(`
    foldTick BarBeat BeatGrid LineFromSecondsOptions Loop LoopPlace MetreParts MetreUnit
    NoteExpression NoteInSeconds PitchPoint PitchPointInSeconds SecondsOptions Timing
  `),
  form: names(`
    LEAST_FORM_AGREEMENT RECOGNITION_WEIGHTS chartEnd chordAtBeat formById previousChange
    BarDifference BreakHit BreakOptions ChartBreak ClosingBars EndingId FormByNameOptions FormMatch FormatFormOptions
    IntroKind ParseFormOptions RecogniseOptions ToMinorOptions TurnaroundId withDiminishedPassing
    withDoubleLength withHalfLength withNinths withQuickChange withSevenths withTriads withTwoFive
    withoutQuickChange
  `),
  layout: names(`
    BREATHS REGISTERS RETUNING_CAUTIONS SHADING_CENTS formatReedEdit nameOnHarp nearestRatio
    otherBreath parseReedEdit ratioCents reedsSounding temperamentById tuningById ChordInterval
    ChordIntonation ChordIntonationOptions EditedTuningSpec HarpCaveat HoleReeds ImpureFifth
    HarpByNameOptions IntervalIntonation IntervalIntonationOptions MissingOptions NearestRatioOptions
    ParseHarpOptions PitchRange PlayerSkill Ratio Reed ReedCents ReedEdit ReedRemedy ReedRow
    RetuningCaution RetuningOptions RetuningStep ScalaOptions Shading SplitWidth TemperOptions
    TemperamentId TemperamentName TemperedReed TuningId TuningName
  `),
  position: names(`
    EASE_OF_TECHNIQUE composePositions positionByNumber ChordShare HarpKeyOptions HarpMapOptions
    KeySection KeysPick LineShares MappedHole MappedSounding PickCriterion PlayerOptions RunNote
    ScaleNote ScaleShare SetListOptions SetListStep SongOptions ToneEase WholeChord
  `),
  tab: names(`
    TAB_DIALECT_IDS liesTogether soundMark LineOfTabOptions ParseTabOptions SoundOptions TabDialect
    TabGuess TabOfLineOptions TabOptions TabReading WordWithLength
  `),
  'chord-tone': names(`
    CHORD_ROUGHNESS FAULT_CODES NOTE_CLASSES chordFamily distanceBetween AlignOptions
    AvailabilityOptions BarScore BarTiming CalibrationPoint ChangeScore ChartPlace ChordFamily
    ChordNowOptions ChordRoughness ChordSuggestion ChordWarning ChordWarningCode Clash Completeness
    Fault FaultCode Following Gesture HarpCell HarpRowsOptions NoteClass Reading ReadingKind
    ShapeOptions ShapeTone SoundingDistance SuggestOptions Suggestion TakeAlignment TakeTiming
    TargetOptions VerdictCode WarnedOf WeightChanges
  `),
  playability: names(`
    DEFAULT_LINE_TEMPO EFFORT_TERMS EFFORT_WEIGHT_IDS PATH_OBJECTIVES effortModelById
    BestPathsOptions ChoiceReason EffortModelSpec EffortSensitivity EffortSensitivityOptions
    EffortTerm EffortWeightEffect EffortWeightGround EffortWeightId EffortWeightInfo
    EffortWeightUnit EffortWeights EveryHarpOptions ExplainedStep FitHarpsAsyncOptions
    FitHarpsOptions Grip HoleRanks KnownModels MoveEffort OtherWay PathAlternative PathHead
    PathInPart PathObjective PathObstacle PathProfile Steps StopSignal TermEfforts UnplayableEvent
  `),
  listen: names(`BandConfidence BandOptions BandReading HeardBar HeardForm`),
  interchange: names(`
    GRIDS HARMONICA_PROGRAM PART_REASONS PIECE_FORMAT_IDS PIECE_WARNINGS AccidentalReach
    FormatOfNameOptions LossesOptions PartChoice PartReason PartSummary PieceFormat PieceSummary
    PieceWarningCode QuantiseOptions ReadAbcOptions ReadMidiOptions ReadNotationOptions
    ReadPieceOptions SwingOptions TabLyricsOptions WriteAbcOptions WriteMidiOptions
    WriteNotationOptions WritePieceOptions WriteTabOptions
  `),
  backing: names(`
    BACKING_CAUTIONS BASS_FIGURES COMPING_FIGURES DRUM_NAMES SHUFFLE_RATIO SWING_BY_ROLE
    SWING_ROLES bandEvents eventSound swingRatio BackingPart BackingSummary KeyChange SwingRole BandEvent BandEventOptions BandSound BassFigure CompingFigure DrumName
    EventSoundOptions GrooveId PartOptions Pattern RenderBandOptions ToneName
  `),
  practice: names(`
    composeLineAsync ComposeAsyncOptions BEND_SHAPES LINE_ENDINGS ORNAMENTS PRACTICE_CAUTIONS modeOfPhrase BendShape ChordPlace
    ComposedStep Density ExerciseKind HeldBend NextStepReason
    ExerciseOptions FormatPhraseOptions GradeLimits KeyChord KeyChords KeyChordsOptions LineEnding
    MelodyExample Ornament OtherHarmony ParsePhraseOptions PhraseBend PhraseChange
    PhraseDetails PhraseFilter PhraseGrade PhraseKind PhraseLike PhraseNotPlaced PhraseNote
    PhraseTime PhraseVariation PlaceOptions PracticeStep ReadPhrasesOptions NextStepsOptions RhythmCell
    phraseById KnownPhrases VaryOptions
  `),
  picture: names(`
    THEME_IDS contrastOf BarRange BreathPictureOptions ChartFormat ChartPictureOptions ChartReader
    ChordRole HandoutLine HarpNames HarpPictureOptions Hex LinePictureOptions
    PositionPictureOptions ScorePictureOptions Shade
  `),
};

function names(text: string): readonly string[] {
  return text.trim().split(/\s+/u);
}
