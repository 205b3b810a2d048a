# workbench: the local page
workbench-skip = To the page
workbench-language = Language
workbench-units = Units
workbench-metric = Metric
workbench-imperial = Imperial
workbench-use = Use
workbench-refused = Not taken
workbench-back = Back to the jobs
workbench-back-job = Back to the job
workbench-jobs = Jobs
workbench-new = New job
workbench-search = Boat or trouble
workbench-find = Find
workbench-import = A job file from elsewhere
workbench-import-do = Bring in
workbench-import-none = No file was given.
workbench-import-long = This file is too long for a job: a job file is a page or two.
workbench-import-binary = This file is not text.
workbench-unreadable = This file has errors and cannot be judged.
workbench-not-judged = Not judged yet.
workbench-last-reading = Last reading { $date }.
workbench-no-reading = No reading yet.
workbench-open = Open:
workbench-parts = Parts of the job
workbench-part-call = The call
workbench-part-boat = The boat
workbench-part-engine = Engine and drive
workbench-part-fitted = What is fitted
workbench-part-readings = Readings
workbench-part-order = Order and fitting
workbench-part-wants = What is wanted
workbench-follows = What follows
workbench-judge = Judge it now
workbench-measure-next = Measure next
workbench-undo = Undo
workbench-history = Earlier states
workbench-history-none = Nothing has been changed yet.
workbench-first-state = The first state kept.
workbench-restore = Bring this back
workbench-duplicate = Copy for a sister boat
workbench-export = Job file
workbench-save = Save
workbench-more = More
workbench-add = Add: { $what }
workbench-remove = Take this out
workbench-unknown = Don't know
workbench-yes = Yes
workbench-no = No
workbench-source = known from
workbench-source-of = How it is known: { $what }
workbench-back-run = Run the other way: { $what }
workbench-other-way = the other way
workbench-both = Somebody else wrote { $theirs } here meanwhile. Yours is kept in the field; save again to put it in its place.
workbench-nothing = nothing
workbench-title-refused = The title cannot be taken as it stands.
workbench-gone = The workbench does not answer: this is not saved yet. It stands in the field; change it again once the workbench runs.
workbench-new-lead = Ask in this order. Not knowing is a fine answer to every question.
workbench-new-wrong = Some answers could not be read. They are kept below, each with what is wrong.
workbench-new-do = Begin the job
workbench-found = { $count ->
    [one] { $count } job
   *[other] { $count } jobs
}

# Keys of the job file as people call them.
workbench-key-title = Boat and trouble
workbench-key-duty = What the propeller is for
workbench-key-complaint = The complaint
workbench-key-since = Since when
workbench-key-changed = What changed just before
workbench-key-onset = How it began
workbench-key-symptoms = Seen, heard or felt
workbench-key-wants = What is wanted
workbench-key-notes = Notes
workbench-key-kind = Kind
workbench-key-length-waterline = Waterline length
workbench-key-length-overall = Length overall
workbench-key-beam = Beam
workbench-key-displacement = Weight as run
workbench-key-loaded-displacement = Weight when loaded
workbench-key-screws = Propellers
workbench-key-arrangement = Where the propeller works
workbench-key-since-scrub = Since the bottom was cleaned
workbench-key-growth = Growth on the bottom
workbench-key-water = Water
workbench-key-depth = Depth of water
workbench-key-model = Maker and model
workbench-key-rated-power = Rated power
workbench-key-rated-speed = Rated speed
workbench-key-no-load-speed = No-load speed
workbench-key-reduction = Reduction ahead
workbench-key-reduction-astern = Reduction astern
workbench-key-stamp = Stamp on the hub
workbench-key-diameter = Diameter
workbench-key-pitch = Pitch
workbench-key-blades = Blades
workbench-key-hand = Hand
workbench-key-cup = Cup
workbench-key-largest-diameter = Largest diameter that fits
workbench-key-stern = Round the propeller
workbench-key-shaft = Shaft
workbench-key-survey = Survey card
workbench-key-reading = Reading
workbench-key-label = Name of the reading
workbench-key-date = Date
workbench-key-full-throttle = Full throttle
workbench-key-engine-speed = Engine speed
workbench-key-by = How that was read
workbench-key-speed = Speed, both ways
workbench-key-speed-by = How the speed was read
workbench-key-order = Order
workbench-key-fitting = Record of the fit
workbench-key-receipt = Check on receipt
workbench-key-under-sail = Under sail
workbench-papers = Papers
workbench-papers-hint = Each opens as a page of its own, complete and ready to print; what is not known is a line to fill in by hand.
workbench-papers-not-yet = This paper cannot be drawn up yet:

# A trial log.
workbench-log = Readings from a log
workbench-log-one = Bring a log
workbench-log-another = Another log
workbench-log-bring = A log of the trial (track, instruments, engine)
workbench-log-hint = GPX, NMEA 0183, a CSV table with a header, or Signal K; two files of the same time are read as one. At most 16 MB.
workbench-log-look = Look at it
workbench-log-many = Four files at most are read as one trial.
workbench-log-none-ticked = No reading was ticked. Go back, tick what is to be taken, and take it again.
workbench-log-kept = Logs brought before
workbench-log-kept-hint = The last { $count } are kept beside the job.
workbench-log-steady = Held for at least, s
workbench-log-again = Look again
workbench-log-offers = { $count ->
    [one] One reading to take
   *[other] { $count } readings to take
}
workbench-log-take = Take these
workbench-log-take-one = Take reading { $number }
workbench-log-there = The job holds it already
workbench-log-speed = Speed through the water
workbench-log-current = Current
workbench-log-runs = { $count ->
    [one] One run
   *[other] { $count } runs
}
workbench-log-worth = Worth
workbench-log-good = good
workbench-log-fair = fair
workbench-log-weak = weak
workbench-log-full = This was full throttle
workbench-log-highest = The highest engine speed of the log. Only who stood at the lever knows whether it was at its stop.
workbench-log-not-highest = The log holds a higher engine speed than this.
workbench-log-read = { $format }: { $lines } lines, { $used } used, { $refused } could not be read.
workbench-log-refused = What could not be read
workbench-log-sentence = { $count ->
    [0] Nothing was held steady long enough to be a reading.
    [one] One reading is offered: the shaded stretches, where throttle and course were held.
   *[other] { $count } readings are offered: the shaded stretches, where throttle and course were held.
}
workbench-log-picture = The log over time
workbench-log-picture-says = Boat speed and engine speed of the log over time. Steady stretches are shaded and numbered by the reading they offer; their means are drawn over them.
workbench-log-axis-speed = speed, kn
workbench-log-axis-rpm = engine speed, rpm
workbench-log-axis-clock = time, UTC
workbench-log-axis-elapsed = time from the start

workbench-drawn = The propeller as it is written here
workbench-drawn-none = Diameter and pitch are enough for a first drawing.
workbench-fold = All that follows
