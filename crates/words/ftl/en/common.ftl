# Words that page and papers share.
common-blades = { $count ->
    [one] { $count } blade
   *[other] { $count } blades
}
