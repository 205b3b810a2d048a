# papers
