# Completion of yardproof's words for fish.

function __yardproof_offers
    set -l words (commandline --tokenize --cut-at-cursor) (commandline --current-token --cut-at-cursor)
    set -l last $words[-1]
    for offer in (yardproof complete -- $words[2..-1] 2>/dev/null)
        if test "$offer" = .paths
            # Paths are completed after FORMAT=, too.
            set -l before (string replace --regex '[^=]*$' '' -- $last)
            for path in (__fish_complete_path (string replace --regex '^.*=' '' -- $last))
                echo $before$path
            end
        else
            echo $offer
        end
    end
end

complete --command yardproof --no-files --arguments '(__yardproof_offers)'
