# Palabras que comparten la página y los documentos.
common-blades = { $count ->
    [one] { $count } pala
   *[other] { $count } palas
}
